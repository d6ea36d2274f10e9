import { expect, test } from 'vitest';
import type { Sequence } from '../../schemas/index.ts';
import { progressOf, progressText } from '../../src/walk/index.ts';
import { press, sequenceOf, state } from './sequences.ts';

const states = ['dark', 'one', 'two', 'three'].map((id) => state(id));
const active = state('active', { shows: 'active-code' });

function texts(transitions: Sequence['transitions']): Record<string, string> {
  const sequence = sequenceOf([...states, active], transitions);
  return Object.fromEntries(
    transitions.map((one) => [`${one.from}-${one.to}`, progressText(progressOf(sequence, one))]),
  );
}

test('on a way without choices every step knows its number and how many there are', () => {
  expect(texts([press('dark', 'one'), press('one', 'active')])).toEqual({
    'dark-one': 'Step 1 of 2',
    'one-active': 'Step 2 of 2',
  });
});

test('before a choice both totals are told, after it the one that was chosen', () => {
  expect(
    texts([press('dark', 'one'), press('one', 'active'), press('one', 'two'), press('two', 'active')]),
  ).toEqual({
    'dark-one': 'Step 1 of 2 or 3',
    'one-active': 'Step 2 of 2',
    'one-two': 'Step 2 of 3',
    'two-active': 'Step 3 of 3',
  });
});

test('where ways of two lengths meet, the number is not known', () => {
  const all = texts([
    press('dark', 'one'),
    press('dark', 'two'),
    press('one', 'two'),
    press('two', 'active'),
  ]);
  expect(all['two-active']).toBe('');
});

test('where the ways go in circles, no total is told', () => {
  const all = texts([
    press('dark', 'one'),
    press('one', 'two'),
    press('two', 'one'),
    press('two', 'three'),
    press('three', 'active'),
  ]);
  expect(all['dark-one']).toBe('Step 1');
});
