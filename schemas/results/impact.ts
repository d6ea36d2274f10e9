/** What `readback impact --json` prints. */
import { z } from 'zod';
import { characteristicNames } from '../characteristics.ts';
import { checkResultSchema } from './check.ts';

const id = z.string();
const verdict = z.enum(['keep', 'keep-and-correct', 'reflash', 'replace', 'measure-first']);
const causes = z
  .array(
    z.strictObject({
      kind: z.enum(['families', 'profiles', 'outputs', 'plans', 'equipment', 'tables']),
      id,
      rules: z.array(id).optional().meta({ description: 'Of a table: the rules that decided or do now.' }),
    }),
  )
  .meta({ description: 'Changed entries it comes from, as near as can be told.' });

const plan = z
  .union([
    id,
    z.strictObject({
      amplifier: id.nullable().meta({ description: 'Class of the amplifier; null where there is none.' }),
      front: id.meta({ description: 'Class of the front speakers.' }),
      rear: id.nullable().meta({ description: 'Class of the rear speakers; null where there are none.' }),
    }),
  ])
  .meta({ description: 'The id of a plan, or a combination of classes of equipment.' });

const value = z
  .strictObject({
    value: z.number(),
    expandedUncertainty: z.number().min(0).meta({ description: 'U for 95 % coverage.' }),
    bound: z.enum(['exact', 'at-most', 'at-least']),
  })
  .nullable()
  .meta({ description: 'In the unit of the characteristic; null where it is not known.' });

const answered = z.strictObject({
  answers: z.array(
    z.strictObject({
      answers: z.array(z.record(z.string(), z.union([z.string(), z.number(), z.boolean()]).nullable())),
      broken: z.string().nullable().meta({ description: 'How the rules contradict each other; else null.' }),
    }),
  ),
  rules: z.array(id).meta({ description: 'Rules that may decide.' }),
});

const profile = z.strictObject({
  profile: id.meta({ description: 'Profile id now (before, where it is gone).' }),
  formerly: id.nullable().meta({ description: 'Its id before, where it was another.' }),
  code: z.string(),
  formerCode: z.string().nullable().meta({ description: 'Its code before, where it was another.' }),
  kind: z.enum(['new', 'changed', 'gone']),
  verdicts: z.array(z.strictObject({ plan, before: verdict, now: verdict, causes })),
  tables: z.array(
    z.strictObject({
      table: id,
      before: answered.meta({
        description: 'Every answer that was possible in the example, and the rules of all cases that differ.',
      }),
      now: answered,
      cases: z.int().min(1).meta({ description: 'Cases there are of what the rider may say.' }),
      differing: z.int().min(1).meta({ description: 'Cases in which the answer differs.' }),
      example: z
        .record(z.string(), z.union([z.string(), z.number(), z.boolean()]).nullable())
        .meta({ description: 'What the rider says in the first of them, by column id.' }),
      causes,
    }),
  ),
  values: z.array(
    z.strictObject({
      name: z.enum(characteristicNames),
      before: value,
      now: value,
      difference: z.number().nullable().meta({ description: 'Now less before.' }),
      inUnitsOfU: z.number().nullable().meta({
        description:
          'The difference over the root of the sum of the squares of the two U (E_n of ISO 13528; what the two share is left out). null where there is no such number, as for counts.',
      }),
      hasMoved: z.boolean().meta({
        description:
          'Whether it moved beyond that, is known in one state only, or became or ceased to be a bound.',
      }),
      causes,
    }),
  ),
  facts: z.array(
    z.strictObject({
      fact: z.enum(['system', 'origin', 'boost-behaviour', 'silent-outputs']),
      before: z.string(),
      now: z.string(),
    }),
  ),
  twins: z
    .strictObject({ before: z.array(id), now: z.array(id) })
    .nullable()
    .meta({ description: 'Profiles that put out the same, where these differ.' }),
});

const finding = checkResultSchema.shape.findings;

export const impactResultSchema = z
  .strictObject({
    since: z.strictObject({
      revision: z.string().meta({ description: 'The revision as it was given, or how it was chosen.' }),
      commit: z.string().meta({ description: 'The commit the content was compared with.' }),
    }),
    profiles: z.array(profile).meta({ description: 'Profiles of which something differs.' }),
    grid: z
      .strictObject({
        plans: z.int().min(0).meta({ description: 'Plans of plans/ that are in both states.' }),
        combinations: z.int().min(0).meta({ description: 'Combinations of classes of equipment.' }),
        leftOut: z.int().min(0).meta({ description: 'Combinations left out.' }),
      })
      .meta({ description: 'What verdicts were compared on, for every profile.' }),
    rules: z.array(
      z.strictObject({
        table: id,
        added: z.array(id),
        removed: z.array(id),
        edited: z.array(id).meta({ description: 'Rules whose tests or answers differ.' }),
        otherwise: z.boolean().meta({ description: 'Whether columns, answers, hit policy or order differ.' }),
      }),
    ),
    pages: z.strictObject({
      added: z.array(z.string()).meta({ description: 'Paths below the base path.' }),
      removed: z.array(
        z.strictObject({
          path: z.string(),
          now: z.string().nullable().meta({ description: 'Where it is now; null where it is gone.' }),
          redirected: z.boolean().meta({ description: 'Whether the old address leads there.' }),
        }),
      ),
    }),
    entries: z.array(
      z.strictObject({
        kind: z.string().meta({ description: 'Kind of the entry, or readings.' }),
        file: z.string().meta({ description: 'Path below the content folder.' }),
        what: z.enum(['added', 'removed', 'renamed', 'edited']),
        formerFile: z.string().optional(),
        decisive: z.boolean().meta({ description: 'Whether answers may follow from what differs.' }),
      }),
    ),
    findings: finding,
    setAside: z.int().min(0).meta({ description: 'How many findings exceptions have set aside.' }),
  })
  .meta({ title: 'Impact result', description: 'Output of readback impact --json.' });

export type ImpactResult = z.infer<typeof impactResultSchema>;
