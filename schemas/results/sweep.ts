/** What `readback sweep FILE --json` prints: figures of a sweep, figures of a tone, or why there are none. */
import { z } from 'zod';

/** What can be wrong with a recording, in a word. */
export const unusableReasons = [
  'not-a-wav',
  'truncated',
  'coding',
  'two-channels',
  'no-such-channel',
  'silent',
  'not-numbers',
  'clipped',
  'too-short',
  'too-long',
  'sample-rate',
  'wrong-stimulus',
  'not-steady',
  'noise',
] as const;
export type UnusableReason = (typeof unusableReasons)[number];

const hz = z.number().positive().meta({ description: 'Frequency of the fundamental, hertz.' });

const bound = z.enum(['exact', 'at-most']).meta({
  description: 'at-most: it did not stand clear of the noise, and the ratio is what it cannot exceed.',
});

const levelPoint = z.strictObject({
  hz,
  levelDb: z.number().meta({ description: 'Level of the fundamental, dB relative to levelReference.' }),
  voltsRms: z
    .number()
    .min(0)
    .optional()
    .meta({ description: 'The same in volts rms, where the recording is known in volts.' }),
});

const harmonic = z.strictObject({
  hz,
  order: z.int().min(2).meta({ description: '2 for the second harmonic, at twice the frequency.' }),
  ratio: z.number().min(0).meta({ description: 'Its amplitude relative to the fundamental’s.' }),
  bound,
});

const total = z.strictObject({
  hz,
  ratio: z.number().min(0).meta({ description: 'THD relative to the fundamental (IEC 60268-3).' }),
  bound,
  upToOrder: z.int().min(2).meta({ description: 'The highest harmonic that lay within reach.' }),
});

const levelReference = z.enum(['1 V', '1 kHz', 'full scale']).meta({
  description:
    'What levels in dB are relative to: 1 V rms (dBV) where volts are known; else, of a sweep, its own level at 1 kHz, and of a tone, a full-scale sine (dBFS, AES17).',
});

const common = {
  stimulus: z.string().meta({ description: 'What was played, as named: sweep:20:20000:10 or tone:1000.' }),
  sampleRateHz: z.number().positive(),
  levelReference,
  response: z.array(levelPoint).meta({
    description: 'Level over frequency, at exact third-octave centres (IEC 61260-1); of a tone, one.',
  }),
  distortion: z.array(harmonic).meta({ description: 'Harmonics 2 to 5, as far as they lie within reach.' }),
  thd: z.array(total).meta({ description: 'Total harmonic distortion over frequency.' }),
  signalToNoiseDb: z.number().meta({ description: 'Signal above the noise, dB, both over the whole range.' }),
  fullScaleVoltsRms: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'Volts rms of a full-scale sine: --full-scale for others at the same input gain.' }),
  session: z
    .strictObject({
      folder: z.string().meta({ description: 'The folder of the bench session.' }),
      files: z.array(z.string()).meta({ description: 'The files written, by path.' }),
      readings: z.int().min(1).meta({ description: 'Readings added.' }),
    })
    .optional()
    .meta({ description: 'What was written, where a session was asked for.' }),
};

const sweepFigures = z.strictObject({
  kind: z.literal('sweep'),
  ...common,
  startSeconds: z.number().meta({
    description: 'Where the sweep begins in the recording, seconds; negative: the recording began later.',
  }),
  leftOut: z
    .array(z.strictObject({ hz, reason: z.string() }))
    .meta({ description: 'Centres of the range no level is given at, and why.' }),
});

const toneFigures = z.strictObject({
  kind: z.literal('tone'),
  ...common,
  recordedHz: z
    .number()
    .positive()
    .meta({ description: 'The tone’s frequency by the clock of the interface, hertz.' }),
  level: z
    .strictObject({
      levelDbfs: z.number().meta({ description: 'dB of a full-scale sine (AES17).' }),
      voltsRms: z.number().min(0).optional(),
      levelDbv: z.number().optional(),
    })
    .meta({ description: 'Root mean square of tone, harmonics and noise: what a true-rms meter reads.' }),
  thdPlusNoise: z
    .number()
    .min(0)
    .max(1)
    .meta({ description: 'THD+N relative to the whole, as a notch analyser reads it (AES17).' }),
  noiseBandHz: z
    .tuple([z.number(), z.number()])
    .meta({ description: 'The band THD and THD+N were taken over, hertz.' }),
  clipped: z.boolean().meta({
    description: 'true: the recording is clipped, and the figures are those of its limit, not of the unit.',
  }),
});

const unusable = z.strictObject({
  kind: z.literal('unusable'),
  reason: z.enum(unusableReasons).meta({ description: 'Why, in a word.' }),
  message: z.string().meta({ description: 'What is wrong with the recording.' }),
  help: z.string().meta({ description: 'What to do next.' }),
});

export const sweepResultSchema = z
  .discriminatedUnion('kind', [sweepFigures, toneFigures, unusable])
  .meta({ title: 'Sweep result', description: 'Output of readback sweep FILE --json.' });

export type SweepResult = z.infer<typeof sweepResultSchema>;
export type SweepFigures = z.infer<typeof sweepFigures>;
export type ToneFigures = z.infer<typeof toneFigures>;
