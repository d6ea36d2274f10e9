/** What `readback table check FILE… --json` prints. */
import { z } from 'zod';
import { checkResultSchema } from './check.ts';

const { findings, counts } = checkResultSchema.shape;

export const tableCheckResultSchema = z
  .strictObject({
    tables: z
      .array(
        z.strictObject({
          file: z.string().meta({ description: 'The file as it was given.' }),
          table: z
            .string()
            .meta({ description: 'The id of the entry, the decision of a DMN file, or the file.' }),
          rules: z.int().min(0).meta({ description: 'How many rules it has.' }),
          analysed: z.boolean().meta({
            description:
              'Whether all combinations of values were looked at. Not those with faults, and not those whose tests or answers are expressions: they can be evaluated only.',
          }),
        }),
      )
      .meta({ description: 'The tables that were looked at.' }),
    findings,
    counts,
  })
  .meta({ title: 'Table check result', description: 'Output of readback table check FILE… --json.' });

export type TableCheckResult = z.infer<typeof tableCheckResultSchema>;
