/** What `readback init --json` prints. */
import { z } from 'zod';

export const initResultSchema = z
  .strictObject({
    folder: z.string().meta({ description: 'The content repository that was begun.' }),
    content: z.string().meta({ description: 'The folder in it that holds site.yaml and the entries.' }),
    files: z.array(z.string()).meta({ description: 'Files written, as seen from the folder.' }),
  })
  .meta({ title: 'Init result', description: 'Output of readback init DIR --json.' });

export type InitResult = z.infer<typeof initResultSchema>;
