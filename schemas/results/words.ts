/** What `readback words --json` prints. */
import { z } from 'zod';

export const wordsResultSchema = z
  .strictObject({
    language: z.string().meta({ description: 'The language asked about (IETF BCP 47).' }),
    texts: z.int().meta({ description: 'How many texts the interface has.' }),
    missing: z
      .array(
        z.strictObject({
          text: z.string().meta({ description: 'The English text.' }),
          counts: z.boolean().meta({ description: 'Whether it needs a form for each plural.' }),
        }),
      )
      .meta({ description: 'Texts the language does not say, shipped ones and those of words/ together.' }),
  })
  .meta({ title: 'Words result', description: 'Output of readback words TAG --json.' });

export type WordsResult = z.infer<typeof wordsResultSchema>;
