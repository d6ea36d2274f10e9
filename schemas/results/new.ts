/** What `readback new KIND --json` prints. */
import { z } from 'zod';
import { checkResultSchema } from './check.ts';

const { findings } = checkResultSchema.shape;

export const newResultSchema = z
  .strictObject({
    kind: z.string().meta({ description: 'The folder of its kind: profiles.' }),
    id: z.string().meta({ description: 'Its id: its path in that folder, without ending.' }),
    file: z.string().meta({ description: 'The file that was written, below the content folder.' }),
    schema: z
      .string()
      .nullable()
      .meta({ description: 'The schema its first line names for editors; null in Markdown.' }),
    findings: findings.meta({ description: 'What the check finds that it did not find before.' }),
  })
  .meta({ title: 'New result', description: 'Output of readback new KIND --json.' });

export type NewResult = z.infer<typeof newResultSchema>;
