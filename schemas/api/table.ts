/** `/api/v1/tables/<table>.json`: a decision table as the shop wrote it. */
import { z } from 'zod';
import { tableSchema } from '../entries/table.ts';
import { page } from './common.ts';

const { order: _order, ...written } = tableSchema.shape;

export const tableDocumentSchema = z
  .strictObject({
    id: z.string().meta({ description: 'Table id.' }),
    page,
    files: z
      .array(z.strictObject({ form: z.enum(['dmn', 'csv']), address: z.url() }))
      .meta({ description: 'The same table for other programs.' }),
    isForPlans: z
      .boolean()
      .meta({ description: 'Whether only the planner can answer it: no profile alone has its answer.' }),
    ...written,
  })
  .meta({ title: 'Decision table', description: 'What the shop decides by, as rules.' });

export type TableDocument = z.infer<typeof tableDocumentSchema>;
