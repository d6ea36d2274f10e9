/** What `readback identify --json` prints. */
import { z } from 'zod';
import { channel } from '../common.ts';

const point = {
  step: z.int().meta({ description: 'Volume step.' }),
  hz: z.number().positive().meta({ description: 'Frequency of the tone, hertz.' }),
  channel: channel.meta({ description: 'The output: FL, FR, RL or RR.' }),
};
const volts = z.number().positive();
const probability = z.number().min(0).max(1);

export const identifyResultSchema = z
  .strictObject({
    unit: z.string().meta({ description: 'Family id.' }),
    levelKnown: z.boolean().meta({
      description: 'Whether the tones were at full scale, as on the bench; else their level is unknown.',
    }),
    readings: z
      .array(
        z.strictObject({
          ...point,
          volts: volts.meta({ description: 'What the meter showed, volts rms.' }),
          accuracyPercent: z
            .number()
            .positive()
            .meta({ description: 'Limit of error (±) it was taken with, per cent of the reading.' }),
        }),
      )
      .meta({ description: 'The readings, in the order given.' }),
    candidates: z
      .array(
        z.strictObject({
          profile: z.string().meta({ description: 'Profile id.' }),
          code: z.string(),
          probability: probability.meta({ description: 'That the unit is on this profile.' }),
          twins: z
            .array(z.string())
            .meta({ description: 'Ids of profiles with the same output: no reading tells them apart.' }),
        }),
      )
      .meta({ description: 'Every measured profile of the unit, likeliest first.' }),
    noneOfThese: probability.meta({
      description: 'That it is none of the candidates. With their probabilities it makes one.',
    }),
    sureness: z
      .enum(['sure', 'likely', 'not-sure', 'none-of-these'])
      .meta({ description: 'How sure it is of the first candidate and its twins, in words.' }),
    conclusion: z.string().meta({ description: 'The answer in a sentence or two.' }),
    nextReading: z
      .strictObject({
        ...point,
        expectedBits: z
          .number()
          .min(0)
          .meta({ description: 'Expected fall of the entropy over profiles and none of them, bits.' }),
        expect: z
          .array(
            z.strictObject({
              profile: z.string().meta({ description: 'Profile id.' }),
              volts: volts.meta({ description: 'What the meter is to show, volts rms.' }),
            }),
          )
          .meta({
            description: 'What to expect under each profile that is still in question, likeliest first.',
          }),
      })
      .nullable()
      .meta({ description: 'The reading that would tell most; null where none would help.' }),
    notes: z.array(z.string()).meta({ description: 'What the answer rests on or leaves out.' }),
    cautions: z.array(z.string()).min(1).meta({ description: 'To be read before a meter is connected.' }),
  })
  .meta({ title: 'Identify result', description: 'Output of readback identify --json.' });

export type IdentifyResult = z.infer<typeof identifyResultSchema>;
