/** `/api/v1/sources.json`: every source, and how far to trust it. */
import { z } from 'zod';
import { sourceSchema } from '../entries/source.ts';
import { page } from './common.ts';

const { kind, title, date, keptAt, trust, trustReason } = sourceSchema.shape;

export const sourcesDocumentSchema = z
  .strictObject({
    sources: z.array(
      z.strictObject({
        id: z.string().meta({ description: 'Source id.' }),
        page,
        kind,
        title,
        date,
        keptAt,
        trust,
        trustReason,
        restsOn: z.array(z.string()).meta({ description: 'Ids of the sources it was taken from.' }),
        sessions: z.array(z.string()).meta({ description: 'Ids of the bench sessions cited as it.' }),
      }),
    ),
  })
  .meta({ title: 'Sources', description: 'Where the facts come from.' });

export type SourcesDocument = z.infer<typeof sourcesDocumentSchema>;
