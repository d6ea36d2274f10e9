/** `/api/v1/index.json`: where everything else is. */
import { z } from 'zod';
import { date } from '../common.ts';
import { document, licence, page } from './common.ts';

export const indexDocumentSchema = z
  .strictObject({
    api: z.literal('v1'),
    name: z.string().meta({ description: 'The shop.' }),
    about: z.string(),
    notice: z.string().nullable().meta({ description: 'What every reader has to be told, if anything.' }),
    licence,
    page,
    contentDate: date.meta({ description: 'The day the content is of.' }),
    openapi: document,
    answers: document,
    sources: document,
    dataPackage: document,
    changes: document,
    units: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        profiles: z.int().min(0).meta({ description: 'How many profiles are known.' }),
        document,
      }),
    ),
    tables: z.array(z.strictObject({ id: z.string(), question: z.string(), document })),
  })
  .meta({ title: 'Index', description: 'Where the documents are.' });

export type IndexDocument = z.infer<typeof indexDocumentSchema>;
