/** What `readback explain CODE --json` prints. */
import { z } from 'zod';

/** What a value holds under. */
export const conditionsSchema = z.strictObject({
  channel: z.string().optional(),
  step: z.number().optional(),
  hz: z.number().optional(),
  loadOhms: z.number(),
  supplyVolts: z.number(),
  signalDbfs: z.number(),
});

export const characteristicSchema = z.strictObject({
  name: z.string().meta({ description: 'Name of the characteristic, such as clean-volts.' }),
  value: z.number(),
  unit: z.string().meta({ description: 'V, dB, Hz or step.' }),
  expandedUncertainty: z
    .number()
    .min(0)
    .meta({ description: 'U for 95 % coverage, in the unit of the value.' }),
  coverageFactor: z.number().positive(),
  bound: z
    .enum(['exact', 'at-most', 'at-least'])
    .meta({ description: 'Whether the value is meant as it stands or as a limit.' }),
  conditions: conditionsSchema.meta({ description: 'What the value holds under.' }),
  readings: z.array(z.string()).meta({ description: 'Ids of the readings, session:line of readings.csv.' }),
  sources: z.array(z.string()).meta({ description: 'Ids of the sources.' }),
});

/** What several sessions say of one level. */
export const agreementSchema = z.strictObject({
  sessions: z.array(z.string()).meta({ description: 'Sessions that read the level, oldest first.' }),
  step: z.number().meta({ description: 'The highest clean step: 1 kHz, front left.' }),
  largestNormalisedError: z.number().min(0).meta({ description: 'Largest |E_n| of any two.' }),
  chiSquare: z.number().min(0),
  degreesOfFreedom: z.number().int().min(1),
  probability: z.number().min(0).max(1).meta({ description: 'Of a χ² at least as large by chance.' }),
  birgeRatio: z.number().min(0),
  consistent: z.boolean().meta({ description: 'Whether that probability is at least 0.05.' }),
  agreeing: z.array(z.string()).meta({ description: 'Sessions of the largest consistent subset.' }),
  betweenBenchVolts: z
    .number()
    .min(0)
    .meta({ description: 'Standard deviation added between benches to make them consistent, volts.' }),
});

export const explainResultSchema = z
  .strictObject({
    profile: z.string().meta({ description: 'Profile id.' }),
    family: z.string().meta({ description: 'Family id.' }),
    code: z.string(),
    sentence: z.string().meta({ description: 'What the code puts out, in one sentence.' }),
    characteristics: z.array(characteristicSchema),
    otherConditions: z.array(characteristicSchema).meta({ description: 'Values at other steps or loads.' }),
    agreement: agreementSchema
      .nullable()
      .meta({ description: 'How the sessions agree; null where fewer than two read the level.' }),
    missing: z.array(z.strictObject({ name: z.string(), reason: z.string() })),
    plans: z.array(
      z.strictObject({
        plan: z.string().meta({ description: 'Plan id.' }),
        verdict: z.enum(['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first']),
        sentence: z.string(),
      }),
    ),
  })
  .meta({ title: 'Explain result', description: 'Output of readback explain CODE --json.' });

export type ExplainResult = z.infer<typeof explainResultSchema>;
