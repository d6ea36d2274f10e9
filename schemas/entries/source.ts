/** A source: the place a fact was taken from, and how far it can be trusted. */
import { z } from 'zod';
import { date, line, paragraph, reference } from '../common.ts';

export const sourceKinds = [
  'bench-session',
  'service-bulletin',
  'data-sheet',
  'riders-report',
  'published-standard',
] as const;

export const sourceSchema = z
  .strictObject({
    kind: z.enum(sourceKinds).meta({ description: 'What kind of source this is.' }),
    title: line.meta({ description: 'Its title, as it would be cited.' }),
    date: date.meta({ description: 'The day it was made or published.' }),
    keptAt: line.meta({ description: 'Where the original can be seen: a shelf, a binder, an address.' }),
    trust: z.enum(['high', 'medium', 'low']).meta({ description: 'How far to trust it.' }),
    trustReason: paragraph.meta({ description: 'Why it is trusted that far, in a sentence.' }),
    restsOn: z
      .array(reference('sources/'))
      .optional()
      .meta({ description: 'The sources this one itself was taken from, where it is not first-hand.' }),
  })
  .meta({ title: 'Source', description: 'Where a fact was taken from: one file in sources/.' });

export type Source = z.infer<typeof sourceSchema>;
