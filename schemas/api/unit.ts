/** `/api/v1/units/<family>.json`: a head-unit family and the list of its profiles. */
import { z } from 'zod';
import { familySchema } from '../entries/family.ts';
import { document, page } from './common.ts';

const { fitment, identify, output, volume, code } = familySchema.shape;

export const unitDocumentSchema = z
  .strictObject({
    id: z.string().meta({ description: 'Family id.' }),
    name: z.string(),
    alsoCalled: z.array(z.string()),
    maker: z.string(),
    summary: z.string(),
    page,
    fitment,
    identify,
    output,
    volume,
    code,
    waysIn: z
      .array(z.strictObject({ id: z.string(), name: z.string(), page }))
      .meta({ description: 'The ways to the active code.' }),
    profiles: z
      .array(
        z.strictObject({
          id: z.string(),
          code: z.string(),
          sentence: z.string().meta({ description: 'What the code puts out, in one sentence.' }),
          document,
          page,
        }),
      )
      .meta({ description: 'Its profiles, each with a document of its own.' }),
    sources: z.array(z.string()).meta({ description: 'Ids of its sources.' }),
  })
  .meta({ title: 'Unit', description: 'A head-unit family.' });

export type UnitDocument = z.infer<typeof unitDocumentSchema>;
