/** Texts of the interface in a language: a further one, or a shop's own words for some. */
import { z } from 'zod';
import { line } from '../common.ts';

const text = z.string().min(1, { error: 'this text is empty' }).max(2000);

export const wordsSchema = z
  .strictObject({
    name: line.meta({ description: 'What the language calls itself: “Français”.' }),
    texts: z.record(z.string(), z.union([text, z.record(z.string(), text)])).meta({
      description:
        'The English text, as the pages show it, and the text in this language. What stands in braces, such as {step}, and marks such as <link> are kept. Texts that count have one for each plural form (one, other).',
    }),
  })
  .meta({ title: 'Words', description: 'Texts of the interface in one language: words/<tag>.yaml.' });

export type Words = z.infer<typeof wordsSchema>;
