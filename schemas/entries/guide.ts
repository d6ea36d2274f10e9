/** A guide: prose for riders and phone staff. */
import { z } from 'zod';
import { caution, line, paragraph, sources } from '../common.ts';

export const guideSchema = z
  .strictObject({
    title: line.meta({ description: 'Its title.' }),
    summary: paragraph.meta({ description: 'One or two sentences for lists and search results.' }),
    order: z.int().min(0).max(1000).meta({ description: 'Place in the list of guides, lowest first.' }),
    cautions: z.array(caution).default([]).meta({ description: 'Cautions printed above the text.' }),
    sources,
  })
  .meta({ title: 'Guide', description: 'Front matter of one file in guides/.' });

export type Guide = z.infer<typeof guideSchema>;
