/** What `readback build --json` prints. */
import { z } from 'zod';

export const buildResultSchema = z
  .strictObject({
    folder: z.string().meta({ description: 'Where the site was written.' }),
    basePath: z.string().meta({ description: 'The path it is made to be served under.' }),
    pages: z.int().min(0).meta({ description: 'HTML pages written.' }),
    since: z
      .strictObject({
        commit: z.string().meta({ description: 'The commit that --since named.' }),
        profiles: z.int().min(0).meta({ description: 'Profiles that answer differently than then.' }),
      })
      .nullable()
      .meta({ description: 'What the feed of changes was compared with; null without --since.' }),
  })
  .meta({ title: 'Build result', description: 'Output of readback build --json.' });

export type BuildResult = z.infer<typeof buildResultSchema>;
