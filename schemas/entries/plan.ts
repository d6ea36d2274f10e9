/** A plan: a typical set-up riders ask about, by classes of equipment, never by brand. */
import { z } from 'zod';
import { line, paragraph, sources } from '../common.ts';

const volts = z.number().min(0.01).max(50);

export const planSchema = z
  .strictObject({
    name: line.meta({ description: 'The plan in the rider’s words.' }),
    summary: paragraph.meta({ description: 'The set-up in a sentence or two.' }),
    order: z.int().min(0).max(1000).meta({ description: 'Place in lists, lowest first.' }),
    feeds: z
      .enum(['factory-amplifier', 'aftermarket-amplifier', 'speakers'])
      .meta({ description: 'What the head unit’s outputs will drive.' }),
    input: z
      .strictObject({
        leastVolts: volts.meta({
          description: 'Volts rms at which the amplifier still reaches full power with its gain fully up.',
        }),
        mostVolts: volts.meta({ description: 'Volts rms its input takes with the gain fully down.' }),
      })
      .optional()
      .meta({ description: 'Input sensitivity range of the amplifier; absent where speakers are driven.' }),
    rear: z
      .enum(['needed', 'not-needed'])
      .meta({ description: 'Whether the plan takes a signal from the rear outputs.' }),
    mostBassBoostDb: z
      .number()
      .min(0)
      .max(30)
      .meta({ description: 'The most bass boost the plan’s speakers are to be given, dB.' }),
    highestLowCornerHz: z
      .number()
      .min(10)
      .max(1000)
      .optional()
      .meta({ description: 'The bass must reach down to here, Hz; absent where it does not matter.' }),
    canCorrect: z
      .boolean()
      .meta({ description: 'true where the plan has an equaliser that could take a fixed boost back out.' }),
    sources,
  })
  .meta({ title: 'Plan', description: 'A typical set-up to judge profiles against: one file in plans/.' });

export type Plan = z.infer<typeof planSchema>;
