/** What `readback serve --json` prints once the site is served. */
import { z } from 'zod';

export const serveResultSchema = z
  .strictObject({
    address: z.url().meta({ description: 'Where the site is served until the program is stopped.' }),
  })
  .meta({ title: 'Serve result', description: 'Output of readback serve --json.' });

export type ServeResult = z.infer<typeof serveResultSchema>;
