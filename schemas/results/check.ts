/** What `readback check --json` prints. */
import { z } from 'zod';

const place = {
  file: z.string().meta({ description: 'Path below the content folder, forward slashes.' }),
  line: z.int().min(1).meta({ description: '1-based line.' }),
  column: z.int().min(1).meta({ description: '1-based column, UTF-16 units.' }),
  endLine: z.int().min(1),
  endColumn: z.int().min(1).meta({ description: 'Exclusive.' }),
};

export const checkResultSchema = z
  .strictObject({
    findings: z.array(
      z.strictObject({
        rule: z.string().meta({ description: 'Rule id.' }),
        severity: z.enum(['error', 'warning', 'note']),
        ...place,
        message: z.string().meta({ description: 'What is wrong.' }),
        help: z.string().meta({ description: 'What to do next.' }),
        related: z.array(z.strictObject({ ...place, message: z.string() })),
      }),
    ),
    counts: z.strictObject({
      error: z.int().min(0),
      warning: z.int().min(0),
      note: z.int().min(0),
    }),
    setAside: z.int().min(0).meta({ description: 'How many findings exceptions have set aside.' }),
    since: z
      .strictObject({
        revision: z.string().meta({ description: 'The revision as it was given.' }),
        commit: z.string().meta({ description: 'The commit that it names.' }),
        older: z.int().min(0).meta({ description: 'Findings that were there before, and are left out.' }),
      })
      .optional()
      .meta({ description: 'With --since: what the findings are new against.' }),
  })
  .meta({ title: 'Check result', description: 'Output of readback check --json.' });

export type CheckResult = z.infer<typeof checkResultSchema>;
