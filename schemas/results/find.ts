/** What `readback find CODE --json` prints. */
import { z } from 'zod';

export const findResultSchema = z
  .strictObject({
    typed: z.string().meta({ description: 'What was looked for.' }),
    verdict: z
      .enum(['found', 'look-again', 'partial', 'unknown'])
      .meta({ description: 'Whether the first candidate can be taken for the code that was meant.' }),
    advice: z.string().meta({ description: 'What to do, in one sentence.' }),
    candidates: z
      .array(
        z.strictObject({
          code: z.string(),
          family: z.string().meta({ description: 'Family id.' }),
          profile: z.string().meta({ description: 'Profile id.' }),
          probability: z.number().min(0).max(1).meta({ description: 'That this code was meant.' }),
          note: z.string().meta({ description: 'How it differs from what was typed.' }),
        }),
      )
      .meta({ description: 'Likeliest first.' }),
  })
  .meta({ title: 'Find result', description: 'Output of readback find CODE --json.' });

export type FindResult = z.infer<typeof findResultSchema>;
