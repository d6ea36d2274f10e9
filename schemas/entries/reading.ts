/** A reading: one row of a session's readings.csv. Readings are stored, never what follows from them. */
import { z } from 'zod';
import { channel, hz, reference } from '../common.ts';

/** The columns of readings.csv, in the order sheets are written in. */
export const readingColumns = [
  'profile',
  'channel',
  'step',
  'hz',
  'voltsRms',
  'thdPercent',
  'repeat',
] as const;

/** Readings above this are not head-unit outputs, whatever the sheet says. */
export const mostReadableVolts = 100;

/** A sheet may hold a thousand times as much: that millivolts stand there for volts is said once, by a rule. */
const mostWrittenVolts = 1000 * mostReadableVolts;

export const readingSchema = z
  .strictObject({
    profile: reference('profiles/').meta({ description: 'The profile the unit was set to.' }),
    channel: channel.meta({ description: 'The output read: FL, FR, RL or RR.' }),
    step: z.int().min(0).max(200).meta({ description: 'Volume step shown on the screen.' }),
    hz: hz.meta({ description: 'Frequency of the test tone, hertz.' }),
    voltsRms: z.number().min(0).max(mostWrittenVolts).meta({ description: 'Reading, volts rms.' }),
    thdPercent: z
      .number()
      .min(0)
      .max(100)
      .nullable()
      .meta({ description: 'Total harmonic distortion, per cent of the fundamental; empty where not read.' }),
    repeat: z.int().min(1).max(1000).meta({ description: 'Number of the repeat, 1 for the first.' }),
  })
  .meta({ title: 'Reading', description: 'One row of outputs/<session>/readings.csv.' });

export type Reading = z.infer<typeof readingSchema>;
