/** What `readback check --rules --json` and `--explain RULE --json` print. */
import { z } from 'zod';

const edit = {
  file: z.string().meta({ description: 'A file of the example, as a path below a content folder.' }),
  bad: z.string().meta({ description: 'The text with the mistake; empty where something is left out.' }),
  good: z.string().meta({ description: 'The text as it should be; empty where the file should not be.' }),
};

export const rulesResultSchema = z
  .strictObject({
    rules: z.array(
      z.strictObject({
        id: z.string().meta({ description: 'Lower-case words joined by hyphens.' }),
        title: z.string().meta({ description: 'A sentence that holds when nothing is wrong.' }),
        severity: z.enum(['error', 'warning', 'note']),
        explanation: z.string().meta({ description: 'What is checked, why, and what to do.' }),
        examples: z.array(
          z.strictObject({
            title: z.string().meta({ description: 'What is wrong, in words.' }),
            edits: z.array(z.strictObject(edit)).min(1),
          }),
        ),
      }),
    ),
  })
  .meta({ title: 'Rules result', description: 'Output of readback check --rules --json.' });

export type RulesResult = z.infer<typeof rulesResultSchema>;
