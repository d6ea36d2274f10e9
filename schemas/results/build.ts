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
    headers: z
      .record(z.string(), z.string())
      .meta({ description: 'Headers a server is to send with every file, by name.' }),
    redirects: z
      .record(z.string(), z.string())
      .meta({ description: 'Addresses of renamed profiles, and where each leads now; base path included.' }),
    nginx: z.string().optional().meta({ description: 'Where the configuration for nginx was written.' }),
  })
  .meta({ title: 'Build result', description: 'Output of readback build --json.' });

export type BuildResult = z.infer<typeof buildResultSchema>;
