/** The comparison the other way round is its mirror image, whatever was edited; and of a state with itself, empty. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Answers } from '../../src/answers.ts';
import type { Impact, Rename } from '../../src/impact/index.ts';
import { exampleFiles, type TextEdit } from '../check/example-base.ts';
import { exampleAnswers, impactFrom, withVolts } from './edited.ts';

const sheet = 'outputs/2025-05-shed/readings.csv';
const rows = exampleFiles.get(sheet) ?? '';
const speaker = `is: speaker
name: Small ones
summary: Full-range speakers.
order: 20
place: full-range
ratedOhms: 4
ratedWatts: 30
sensitivityDb: 88
lowestHz: 90
mostBassBoostDb: 3
sources: [maker-bulletin]
`;
const edits: readonly TextEdit[] = [
  { file: 'tables/behind-an-amplifier.yaml', good: '"< 1"', bad: '"< 2.1"' },
  { file: 'tables/behind-an-amplifier.yaml', good: 'equaliser: "yes"', bad: 'equaliser: "no"' },
  { file: 'plans/two-channel.yaml', good: 'leastVolts: 1,', bad: 'leastVolts: 2.1,' },
  { file: 'equipment/small.yaml', good: '', bad: speaker },
  { file: 'equipment/four-channels.yaml', good: 'leastVolts: 1', bad: 'leastVolts: 3' },
  {
    file: sheet,
    good: rows,
    bad: withVolts(
      ([id]) => id === 'moorlight/kn-2093',
      (volts) => volts * 1.1,
    )(rows),
  },
  { file: 'profiles/moorlight/kn-2093.yaml', good: 'system: amplified', bad: 'system: unamplified' },
  { file: 'profiles/moorlight/rt-5561.yaml', good: 'code: "RT-5561"', bad: 'code: "RT-5562"' },
  { file: 'tables/rear-speakers.yaml', good: 'feet: "<= 10"', bad: 'feet: "<= 12"' },
];
const known = new Map<string, Promise<Answers>>();
function answersOf(some: readonly TextEdit[]): Promise<Answers> {
  const key = some.map((one) => edits.indexOf(one)).join();
  const answers = known.get(key) ?? exampleAnswers(some);
  known.set(key, answers);
  return answers;
}

/** Everything that has a side, turned round; causes are asked from the state before, and so have no mirror image. */
function mirrored(impact: Impact): unknown {
  const turned = <T extends { before: unknown; now: unknown }>({ before, now, ...rest }: T) => ({
    ...rest,
    before: now,
    now: before,
  });
  const kinds = { new: 'gone', gone: 'new', changed: 'changed' } as const;
  const ends = { added: 'removed', removed: 'added', edited: 'edited', renamed: 'renamed' } as const;
  return plain({
    ...impact,
    profiles: impact.profiles.map((one) => ({
      ...one,
      profile: one.formerly ?? one.profile,
      formerly: one.formerly === undefined ? undefined : one.profile,
      code: one.formerCode ?? one.code,
      formerCode: one.formerCode === undefined ? undefined : one.code,
      kind: kinds[one.kind],
      verdicts: one.verdicts.map(turned),
      tables: one.tables.map(turned),
      values: one.values.map(({ difference, inUnitsOfU, ...rest }) => ({
        ...turned(rest),
        difference: difference === undefined ? undefined : -difference,
        inUnitsOfU: inUnitsOfU === undefined ? undefined : -inUnitsOfU,
      })),
      facts: one.facts.map(turned),
      twins: one.twins && turned(one.twins),
    })),
    rules: impact.rules.map(({ added, removed, ...rest }) => ({ ...rest, added: removed, removed: added })),
    entries: impact.entries.map(({ file, formerFile, what, ...rest }) => ({
      ...rest,
      what: ends[what],
      file: formerFile ?? file,
      formerFile: formerFile === undefined ? undefined : file,
    })),
  });
}

type Listed = Readonly<Record<'verdicts' | 'tables' | 'values', readonly object[]>>;

interface Plain {
  readonly profiles: readonly Listed[];
  readonly rules: readonly object[];
  readonly entries: readonly object[];
  readonly grid: Impact['grid'];
}

/** Without causes, in an order that does not hang on the sides. */
function plain({ profiles, rules, entries, grid }: Plain): unknown {
  const sorted = (list: readonly object[]): string[] =>
    list.map((one) => JSON.stringify({ ...one, ...withoutCauses }, keysInOrder)).sort();
  return {
    profiles: sorted(
      profiles.map((one) => ({
        ...one,
        verdicts: sorted(one.verdicts),
        tables: sorted(one.tables),
        values: sorted(one.values),
      })),
    ),
    rules: sorted(rules),
    entries: sorted(entries),
    grid: [grid.typical, grid.combinations, grid.leftOut],
  };
}

const withoutCauses = { causes: undefined, byTable: undefined, byProfile: undefined };

function keysInOrder(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

test('turned round it is its mirror image', async () => {
  const some = fc.subarray([...edits]);
  await fc.assert(
    fc.asyncProperty(some, some, async (one, other) => {
      const [before, now] = [await answersOf(one), await answersOf(other)];
      expect(plain(impactFrom(now, before))).toEqual(mirrored(impactFrom(before, now)));
    }),
    { numRuns: 12, seed: 4417 },
  );
});

test('a renamed profile is the same one, both ways', async () => {
  const [from, to] = ['profiles/fellside/310.yaml', 'profiles/fellside/311.yaml'];
  const before = await exampleAnswers();
  const { answersOf: of } = await import('../../src/answers.ts');
  const { MemoryFiles, readBase } = await import('../../src/base/index.ts');
  const files = new Map(exampleFiles);
  files.set(to, files.get(from) ?? '');
  files.delete(from);
  const now = of((await readBase(new MemoryFiles('example', files))).base);
  const there: Rename[] = [{ from, to }];
  const back: Rename[] = [{ from: to, to: from }];
  expect(plain(impactFrom(now, before, back))).toEqual(mirrored(impactFrom(before, now, there)));
  expect(impactFrom(before, now, there).profiles).toEqual([]);
  expect(impactFrom(before, now).profiles.map(({ kind }) => kind)).toEqual(['new', 'gone']);
});

test('of a state with itself there is nothing', async () => {
  for (const one of [[], [...edits]]) {
    const [before, now] = [await exampleAnswers(one), await exampleAnswers(one)];
    const { profiles, rules, entries } = impactFrom(before, now);
    expect({ profiles, rules, entries }).toEqual({ profiles: [], rules: [], entries: [] });
  }
});
