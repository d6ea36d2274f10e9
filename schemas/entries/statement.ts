/** Statements: what a source other than the bench says a profile does, to hold against the readings. */
import { z } from 'zod';
import { channel, hz, paragraph, reference } from '../common.ts';

const tolerance = (unit: string) =>
  z
    .number()
    .min(0)
    .optional()
    .meta({ description: `How far off the source may be (±), ${unit}; absent: as rounded.` });
const profile = reference('profiles/');

/** One claim; `trait` decides which fields it has. A missing tolerance means: as rounded. */
export const claimSchema = z.discriminatedUnion('trait', [
  z.strictObject({
    profile,
    trait: z.literal('bass-boost'),
    valueDb: z.number().min(-40).max(40).meta({ description: 'Boost relative to 1 kHz, dB.' }),
    toleranceDb: tolerance('dB'),
  }),
  z.strictObject({
    profile,
    trait: z.literal('clean-volts'),
    valueVolts: z
      .number()
      .min(0)
      .max(50)
      .meta({ description: 'Volts rms at the highest clean step, 1 kHz.' }),
    toleranceVolts: tolerance('volts'),
  }),
  z.strictObject({
    profile,
    trait: z.literal('highest-clean-step'),
    valueStep: z.int().min(0).max(200).meta({ description: 'The highest step that plays clean.' }),
    toleranceSteps: z
      .int()
      .min(0)
      .optional()
      .meta({ description: 'How many steps the source may be off; absent: none.' }),
  }),
  z.strictObject({
    profile,
    trait: z.literal('lower-corner'),
    valueHz: hz.meta({ description: 'Frequency 3 dB below 1 kHz at the low end.' }),
    toleranceHz: tolerance('hertz'),
  }),
  z.strictObject({
    profile,
    trait: z.literal('upper-corner'),
    valueHz: hz.meta({ description: 'Frequency 3 dB below 1 kHz at the high end.' }),
    toleranceHz: tolerance('hertz'),
  }),
  z.strictObject({
    profile,
    trait: z.literal('rear-to-front'),
    valueDb: z.number().min(-100).max(40).meta({ description: 'Rear level relative to front, dB.' }),
    toleranceDb: tolerance('dB'),
  }),
  z.strictObject({
    profile,
    trait: z.literal('muted'),
    channel: channel.meta({ description: 'The output it speaks of.' }),
    value: z.boolean().meta({ description: 'true: the source says this output is silent.' }),
  }),
]);

export const statementSchema = z
  .strictObject({
    source: reference('sources/').meta({ description: 'Where the statement was taken from.' }),
    quote: paragraph.meta({ description: 'The words of the source.' }),
    claims: z.array(claimSchema).min(1).meta({ description: 'What the words come down to, in numbers.' }),
  })
  .meta({ title: 'Statement', description: 'What a source says a profile does: one file in statements/.' });

export type Statement = z.infer<typeof statementSchema>;
export type Claim = z.infer<typeof claimSchema>;
