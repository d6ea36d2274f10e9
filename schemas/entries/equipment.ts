/** Classes of equipment riders plan with, so that nobody needs a data sheet; never a brand or a model. */
import { z } from 'zod';
import { hz, line, paragraph, sources } from '../common.ts';

const named = {
  name: line.meta({ description: 'The class in the rider’s words: “Four channels, 80 watts each”.' }),
  summary: paragraph.meta({ description: 'What belongs to the class, in a sentence.' }),
  order: z.int().min(0).max(1000).meta({ description: 'Place in lists, lowest first.' }),
  sources,
};
const ohms = z.number().min(0.5).max(64);
const watts = z.number().min(1).max(5000);

export const amplifierSchema = z.strictObject({
  ...named,
  is: z.literal('amplifier').meta({ description: 'amplifier or speaker.' }),
  place: z
    .enum(['factory', 'aftermarket'])
    .meta({ description: 'Whether the machine was built with it, or it is bought.' }),
  leastVolts: z
    .number()
    .min(0.01)
    .max(50)
    .meta({ description: 'Volts rms at its input for full power with the gain fully up.' }),
  mostVolts: z
    .number()
    .min(0.01)
    .max(50)
    .meta({ description: 'Volts rms its input takes with the gain fully down.' }),
  channels: z.int().min(1).max(12).meta({ description: 'How many channels it has.' }),
  ratedWatts: watts.meta({ description: 'Rated power of a channel into the rated load, watts.' }),
  ratedOhms: ohms.meta({ description: 'The load the power is rated into, ohms.' }),
  leastOhms: ohms.meta({ description: 'The least load a channel may drive, ohms.' }),
  operatingClass: z.enum(['AB', 'D']).meta({ description: 'How its output stages work: class AB or D.' }),
  equaliser: z.boolean().meta({ description: 'true where it can take a fixed boost back out.' }),
  highPass: z.boolean().meta({ description: 'true where it can keep bass from small speakers.' }),
});

export const speakerSchema = z.strictObject({
  ...named,
  is: z.literal('speaker').meta({ description: 'amplifier or speaker.' }),
  place: z
    .enum(['full-range', 'subwoofer'])
    .meta({ description: 'What it plays: everything, or bass alone.' }),
  ratedOhms: ohms.meta({ description: 'Rated impedance, ohms.' }),
  ratedWatts: watts.meta({ description: 'Power it stands for long, watts.' }),
  lowestHz: hz.meta({ description: 'The lowest frequency it is made to play, Hz.' }),
  sensitivityDb: z
    .number()
    .min(60)
    .max(115)
    .meta({ description: 'Sound pressure level at 1 m from 1 W, dB.' }),
  mostBassBoostDb: z
    .number()
    .min(0)
    .max(30)
    .meta({ description: 'The most bass boost it is to be given, dB.' }),
});

export const equipmentSchema = z.discriminatedUnion('is', [amplifierSchema, speakerSchema]).meta({
  title: 'Class of equipment',
  description: 'Amplifiers or speakers of a kind, to plan with: one file in equipment/.',
});

export type AmplifierEquipment = z.infer<typeof amplifierSchema>;
export type SpeakerEquipment = z.infer<typeof speakerSchema>;
export type Equipment = z.infer<typeof equipmentSchema>;
