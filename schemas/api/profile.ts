/** `/api/v1/profiles/<family>/<slug>.json`: everything known of one profile. */
import { z } from 'zod';
import { channel, date } from '../common.ts';
import { profileSchema } from '../entries/profile.ts';
import { agreementSchema, characteristicSchema, conditionsSchema } from '../results/explain.ts';
import { page } from './common.ts';

const value = characteristicSchema.extend({
  text: z.string().meta({ description: 'The value as the page shows it, rounded by its uncertainty.' }),
});

const level = z.strictObject({
  step: z.number().meta({ description: 'Volume step.' }),
  volts: z.number().meta({ description: 'Front left, 1 kHz, volts rms.' }),
  expandedUncertainty: z.number().min(0).meta({ description: 'U for 95 % coverage, volts.' }),
  thdPercent: z.number().nullable().meta({ description: 'Mean THD, per cent; null where none was read.' }),
  clean: z.boolean().meta({ description: 'Whether the step counts as clean.' }),
});

const response = z.strictObject({
  step: z.number().meta({ description: 'Volume step.' }),
  points: z
    .array(z.strictObject({ hz: z.number(), levelDb: z.number(), expandedUncertaintyDb: z.number().min(0) }))
    .meta({ description: 'Levels of front left relative to 1 kHz, dB, with U for 95 % coverage.' }),
});

const planAnswer = z.strictObject({
  plan: z.string().meta({ description: 'Plan id.' }),
  name: z.string(),
  page,
  verdict: z.enum(['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first']),
  possible: z.array(z.string()).meta({ description: 'Verdicts possible within the uncertainty.' }),
  sentence: z.string().meta({ description: 'The answer in one sentence.' }),
  reasons: z.array(
    z.strictObject({
      topic: z.enum(['level', 'bass', 'low-end', 'rear', 'system']),
      outcome: z.enum(['fits', 'correct', 'fails', 'borderline', 'unknown']),
      text: z.string(),
      readings: z.array(z.string()).meta({ description: 'Ids of the readings behind it.' }),
    }),
  ),
});

const tableAnswer = z.strictObject({
  table: z.string().meta({ description: 'Table id.' }),
  question: z.string(),
  page,
  settled: z.boolean().meta({ description: 'Whether the answer is the same whatever the rider plans.' }),
  answer: z.string().nullable().meta({ description: 'The answer; null where it is not settled.' }),
  dependsOn: z.array(z.string()).meta({ description: 'Questions whose answers decide.' }),
  borderline: z
    .array(z.strictObject({ label: z.string(), value: z.string().nullable(), settledBy: z.string() }))
    .meta({ description: 'Values too near a limit, or not measured, and what would settle them.' }),
  rules: z
    .array(
      z.strictObject({
        rule: z.string().meta({ description: 'Rule id.' }),
        answer: z.string(),
        sureness: z.enum(['sure', 'perhaps']),
        cases: z.array(z.string()).meta({ description: 'What has to be so for a rule that is not sure.' }),
        say: z.string().nullable().meta({ description: 'The answer in words, for the rider.' }),
      }),
    )
    .meta({ description: 'The rules that give an answer, surely or perhaps.' }),
});

const session = z.strictObject({
  session: z.string().meta({ description: 'Session id; its readings are in the data package.' }),
  date,
  source: z.string().meta({ description: 'Source id.' }),
  setAside: z.string().nullable().meta({ description: 'Why its readings do not count; null where they do.' }),
});

export const profileDocumentSchema = z
  .strictObject({
    id: z.string().meta({ description: 'Profile id: family/slug.' }),
    family: z.string().meta({ description: 'Family id.' }),
    code: z.string().meta({ description: 'The code exactly as the screen shows it.' }),
    otherSpellings: z.array(z.string()),
    soldAs: z.array(z.string()).meta({ description: 'Names it is sold or spoken of under.' }),
    origin: profileSchema.shape.origin,
    system: profileSchema.shape.system,
    about: z.string(),
    page,
    readingsPage: page
      .nullable()
      .meta({ description: 'Every reading of it; null where it was not measured.' }),
    sentence: z.string().meta({ description: 'What the code puts out, in one sentence.' }),
    conditions: conditionsSchema
      .nullable()
      .meta({ description: 'The main conditions; null where nothing was measured.' }),
    characteristics: z.array(value).meta({ description: 'The headline values.' }),
    otherConditions: z.array(value).meta({ description: 'Values at other steps or loads.' }),
    levels: z.array(level).meta({ description: 'The level by volume step.' }),
    responses: z.array(response).meta({ description: 'The response at volume steps.' }),
    boostBehaviour: z.enum(['none', 'fixed', 'fading', 'switched', 'changing', 'unknown']),
    silentChannels: z.array(channel).meta({ description: 'Outputs silent while the front plays.' }),
    agreement: agreementSchema
      .nullable()
      .meta({ description: 'How the sessions agree; null where fewer than two read the level.' }),
    missing: z
      .array(z.strictObject({ name: z.string(), reason: z.string() }))
      .meta({ description: 'What could not be computed, and which readings are missing for it.' }),
    plans: z.array(planAnswer).meta({ description: 'What each usual plan makes of it.' }),
    tables: z.array(tableAnswer).meta({ description: 'What each decision table says of it.' }),
    twins: z.array(z.string()).meta({ description: 'Profiles whose outputs agree within the uncertainty.' }),
    sessions: z.array(session).meta({ description: 'Sessions that measured it, oldest first.' }),
    sources: z.array(z.string()).meta({ description: 'Ids of all its sources.' }),
  })
  .meta({ title: 'Profile', description: 'Everything known of one tuning profile.' });

export type ProfileDocument = z.infer<typeof profileDocumentSchema>;
