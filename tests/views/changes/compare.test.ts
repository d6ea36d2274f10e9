/** What counts as a change of the answers, and how it is said. */
import { expect, test } from 'vitest';
import { answersOf } from '../../../src/answers.ts';
import { readBase } from '../../../src/base/index.ts';
import { type Change, changeOf } from '../../../src/impact/index.ts';
import { changesSince } from '../../../src/views/changes/compare.ts';
import { editedExample, type TextEdit } from '../../check/example-base.ts';

async function answers(edits: readonly TextEdit[] = []) {
  return answersOf((await readBase(editedExample(edits))).base);
}
const example = await answers();
async function changes(edits: readonly TextEdit[]) {
  return changesSince(changeOf(example, await answers(edits)));
}

/** The change of one profile, with parts of it put in. */
function told(part: Partial<Change['impact']['profiles'][number]>): readonly string[] | undefined {
  const { states, impact } = changeOf(example, example);
  const nothing = { formerly: undefined, formerCode: undefined, twins: undefined, kind: 'changed' } as const;
  const profile = {
    profile: 'moorlight/km-4417',
    code: 'KM-4417',
    verdicts: [],
    tables: [],
    values: [],
    facts: [],
  };
  return changesSince({ states, impact: { ...impact, profiles: [{ ...profile, ...nothing, ...part }] } })[0]
    ?.sentences;
}
const volts = (value: number, expandedUncertainty: number, bound: 'exact' | 'at-least' = 'exact') => {
  return { value, expandedUncertainty, bound };
};
const clean = { name: 'clean-volts', difference: undefined, inUnitsOfU: undefined, causes: [] } as const;

test('a value that moved beyond its uncertainty is told; one within it, or written the same, is not', () => {
  const moved = { ...clean, before: volts(4.8, 0.1), now: volts(5.12, 0.3), hasMoved: true };
  expect(told({ values: [moved] })).toEqual([
    'Clean output: 5.1\u00a0V ±\u00a00.3\u00a0V; before, 4.80\u00a0V ±\u00a00.10\u00a0V.',
  ]);
  expect(told({ values: [{ ...moved, hasMoved: false }] })).toBeUndefined();
  expect(told({ values: [{ ...moved, before: volts(4.8, 0.1), now: volts(4.8001, 0.1) }] })).toBeUndefined();
});

test('a count, a bound, what became known and what is known no more', () => {
  const step = { ...clean, name: 'highest-clean-step', hasMoved: true } as const;
  expect(told({ values: [{ ...step, before: volts(24, 0), now: volts(25, 0) }] })).toEqual([
    'Highest clean step: step\u00a025; before, step\u00a024.',
  ]);
  const value = { ...clean, before: volts(5, 0.1), now: volts(5, 0.1, 'at-least'), hasMoved: true };
  expect(told({ values: [value] })).toEqual([
    'Clean output: at least 5.00\u00a0V ±\u00a00.10\u00a0V; before, 5.00\u00a0V ±\u00a00.10\u00a0V.',
  ]);
  expect(told({ values: [{ ...value, before: undefined, now: volts(5, 0.1) }] })).toEqual([
    'Clean output: 5.00\u00a0V ±\u00a00.10\u00a0V; not known before.',
  ]);
  expect(told({ values: [{ ...value, now: undefined }] })).toEqual([
    'Clean output: not known any more; before, 5.00\u00a0V ±\u00a00.10\u00a0V.',
  ]);
});

test('a verdict that flipped is told; combinations are not, nor a plan that is new or gone', async () => {
  const file = 'plans/two-channel.yaml';
  const found = await changes([{ file, good: 'leastVolts: 1,', bad: 'leastVolts: 4,' }]);
  expect(found).toEqual([
    {
      profile: 'moorlight/kn-2093',
      code: 'KN-2093',
      kind: 'changed',
      sentences: ['For the plan “Two-channel amplifier” the answer is now “Reflash”; before, “Keep”.'],
    },
  ]);
  const combination = { amplifier: undefined, front: 'x', rear: undefined };
  const verdicts = [{ plan: combination, before: 'keep', now: 'reflash', causes: [] } as const];
  expect(told({ verdicts })).toBeUndefined();
  expect(await changes([{ file: 'plans/other.yaml', good: '', bad: 'name: Not read\n' }])).toEqual([]);
});

test('a table that answers otherwise is told with its question', async () => {
  const file = 'tables/behind-an-amplifier.yaml';
  expect(await changes([{ file, good: '"< 1"', bad: '"< 4"' }])).toMatchObject([
    {
      profile: 'moorlight/kn-2093',
      sentences: [
        '“Can I put an amplifier behind this profile as it is?” is answered “reflash” now; before, “keep” (whatever is planned).',
      ],
    },
  ]);
});

test('profiles that are new or gone, and one that was only renamed', async () => {
  const file = 'profiles/fellside/310.yaml';
  const text = editedExample([]).read(file).source.text;
  const copy = { file: 'profiles/fellside/311.yaml', good: '', bad: text.replace('"310"', '"311"') };
  expect(await changes([copy])).toEqual([
    { profile: 'fellside/311', code: '311', kind: 'new', sentences: [] },
  ]);
  const more = await answers([copy]);
  expect(changesSince(changeOf(more, example))).toEqual([
    { profile: 'fellside/311', code: '311', kind: 'gone', sentences: [] },
  ]);
  const code = { file, good: 'code: "310"', bad: 'code: "31-0"' };
  expect((await changes([code]))[0]?.sentences).toEqual(['The code is written 31-0 now; before, 310.']);
});
