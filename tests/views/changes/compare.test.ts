/** What counts as a change of the answers, and how it is said. */
import { expect, test } from 'vitest';
import type { AnswersDocument, ProfileAnswers } from '../../../schemas/api/answers.ts';
import { changesSince } from '../../../src/views/changes/compare.ts';

const plans = new Map([['front', 'Two channels, front']]);
const document = (profiles: Record<string, Partial<ProfileAnswers>>): AnswersDocument => ({
  units: {},
  profiles: Object.fromEntries(
    Object.entries(profiles).map(([id, one]) => [id, { code: 'A1', verdicts: {}, values: {}, ...one }]),
  ),
});
const changes = (
  before: Record<string, Partial<ProfileAnswers>>,
  now: Record<string, Partial<ProfileAnswers>>,
  renamed: [string, string][] = [],
) => changesSince({ answers: document(before), renamed: new Map(renamed) }, document(now), plans);
const volts = (value: number, u: number, bound: 'exact' | 'at-most' | 'at-least' = 'exact') => ({
  values: { 'clean-volts': [value, u, bound] as [number, number, typeof bound] },
});

test('a value that moved by more than the larger U is told, one within it is not', () => {
  expect(changes({ 'a/b': volts(4.8, 0.1) }, { 'a/b': volts(5.12, 0.3) })).toEqual([
    {
      profile: 'a/b',
      code: 'A1',
      kind: 'changed',
      sentences: ['Clean output: 5.1\u00a0V ±\u00a00.3\u00a0V; before, 4.80\u00a0V ±\u00a00.10\u00a0V.'],
    },
  ]);
  expect(changes({ 'a/b': volts(4.8, 0.1) }, { 'a/b': volts(5.09, 0.3) })).toEqual([]);
  // Either way round, the larger of the two decides.
  expect(changes({ 'a/b': volts(5.09, 0.3) }, { 'a/b': volts(4.8, 0.1) })).toEqual([]);
});

test('a count has no U: any other number is a change; a bound differs from a value', () => {
  const step = (value: number) => ({
    values: { 'highest-clean-step': [value, 0, 'exact'] as [number, number, 'exact'] },
  });
  expect(changes({ 'a/b': step(24) }, { 'a/b': step(25) })[0]?.sentences).toEqual([
    'Highest clean step: step\u00a025; before, step\u00a024.',
  ]);
  expect(changes({ 'a/b': volts(5, 0.1) }, { 'a/b': volts(5, 0.1, 'at-least') })[0]?.sentences).toEqual([
    'Clean output: at least 5.00\u00a0V ±\u00a00.10\u00a0V; before, 5.00\u00a0V ±\u00a00.10\u00a0V.',
  ]);
});

test('what became known, and what is known no more', () => {
  expect(changes({ 'a/b': {} }, { 'a/b': volts(5, 0.1) })[0]?.sentences).toEqual([
    'Clean output: 5.00\u00a0V ±\u00a00.10\u00a0V; not known before.',
  ]);
  expect(changes({ 'a/b': volts(5, 0.1) }, { 'a/b': {} })[0]?.sentences).toEqual([
    'Clean output: not known any more; before, 5.00\u00a0V ±\u00a00.10\u00a0V.',
  ]);
});

test('a verdict that flipped is told; a plan that is new or gone flips none', () => {
  expect(
    changes(
      { 'a/b': { verdicts: { front: 'keep', old: 'keep' } } },
      { 'a/b': { verdicts: { front: 'reflash', new: 'keep' } } },
    ),
  ).toMatchObject([
    { sentences: ['For the plan “Two channels, front” the answer is now “Reflash”; before, “Keep”.'] },
  ]);
});

test('profiles that are new or gone, and one that was only renamed', () => {
  expect(changes({ 'a/old': {}, 'a/b': {} }, { 'a/b': {}, 'a/new': { code: 'N' } })).toEqual([
    { profile: 'a/new', code: 'N', kind: 'new', sentences: [] },
    { profile: 'a/old', code: 'A1', kind: 'gone', sentences: [] },
  ]);
  expect(changes({ 'a/old': volts(5, 1) }, { 'a/new': volts(5, 1) }, [['a/old', 'a/new']])).toEqual([]);
  expect(changes({ 'a/b': { code: 'A-1' } }, { 'a/b': {} })[0]?.sentences).toEqual([
    'The code is written A1 now; before, A-1.',
  ]);
});
