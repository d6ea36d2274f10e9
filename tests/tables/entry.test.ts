/** Table entries as people write them. */
import { describe, expect, test } from 'vitest';
import { tableSchema } from '../../schemas/index.ts';
import { evaluateTable, tableOfEntry } from '../../src/tables/index.ts';

const entry = (changes: Record<string, unknown> = {}) =>
  tableSchema.parse({
    name: 'Rear speakers',
    question: 'What feeds the rear speakers?',
    about: 'Which outputs feed the rear.',
    order: 1,
    hit: 'first',
    inputs: [
      { id: 'volts', label: 'Clean volts', holds: 'characteristic', characteristic: 'clean-volts' },
      { id: 'rear', label: 'Rear outputs', holds: 'trait', trait: 'rear-outputs' },
      { id: 'wanted', label: 'Rear wanted', holds: 'yes-no', question: 'Rear speakers?' },
      { id: 'day', label: 'Bought', holds: 'date', question: 'When was it bought?' },
    ],
    outputs: [{ id: 'answer', label: 'What to do', holds: 'choice', values: ['front', 'rear', 'nothing'] }],
    rules: [
      { id: 'none', when: { wanted: 'no' }, give: { answer: 'nothing' } },
      { id: 'from-front', when: { rear: 'silent, none' }, give: { answer: 'front' } },
      { id: 'early', when: { rear: 'not(none)', day: '< 2020-01-01' }, give: { answer: 'front' } },
      { id: 'else', give: { answer: 'rear' } },
    ],
    sources: ['classes'],
    ...changes,
  });
const faults = (changes: Record<string, unknown>) =>
  tableOfEntry(entry(changes)).faults.map(({ path, part, message }) => [path.join('.'), part, message]);
const rule = (when: Record<string, unknown>, give: Record<string, unknown> = { answer: 'rear' }) => ({
  rules: [{ id: 'only', when, give }],
});

test('choices, yes and no, and dates are written as words', () => {
  const { table, faults: none } = tableOfEntry(entry());
  expect(none).toEqual([]);
  const answer = (given: Record<string, string | number | boolean>) =>
    table && evaluateTable(table, { volts: 3, day: '2024-05-01', ...given }).rules;
  expect(answer({ rear: 'playing', wanted: false })).toEqual(['none']);
  expect(answer({ rear: 'silent', wanted: true })).toEqual(['from-front']);
  expect(answer({ rear: 'playing', wanted: true, day: '2019-12-31' })).toEqual(['early']);
  expect(answer({ rear: 'playing', wanted: true, day: '2020-01-01' })).toEqual(['else']);
});

describe('faults stand at their field', () => {
  test('a column that is not there', () => {
    expect(faults(rule({ volt: '< 3' }))).toEqual([
      ['rules.0.when.volt', 'key', 'This table has no input “volt”.'],
    ]);
  });

  test('an answer that is missing, and one that is no answer', () => {
    expect(faults(rule({}, {}))).toEqual([
      ['rules.0.give', 'key', 'The rule “only” gives no answer for “answer”.'],
    ]);
    expect(faults(rule({}, { answer: 'back' }))).toEqual([
      ['rules.0.give.answer', 'value', '“back” is no answer of “What to do”.'],
    ]);
  });

  test('a test that does not fit its column', () => {
    expect(faults(rule({ rear: 'quiet' }))).toEqual([
      ['rules.0.when.rear', 'value', '“quiet” is no value of this column.'],
    ]);
    expect(faults(rule({ rear: '"quiet"' }))).toEqual([
      ['rules.0.when.rear', 'value', '“quiet” is no value of this column.'],
    ]);
    expect(faults(rule({ volts: '< 3 V' }))).toEqual([
      ['rules.0.when.volts', 'value', '“< 3 V” has a unit in it, and tests hold numbers only.'],
    ]);
  });

  test('a test of which nothing can be proved', () => {
    expect(faults(rule({ volts: '? * 2 < 3' }))).toEqual([
      [
        'rules.0.when.volts',
        'value',
        '“? * 2 < 3” is more than a simple test, so nothing can be proved about it.',
      ],
    ]);
  });

  test('two rules of one name, and an aggregation of a single answer', () => {
    const twice = { id: 'same', give: { answer: 'rear' } };
    expect(faults({ rules: [twice, twice] })).toEqual([
      ['rules.1.id', 'value', 'There are two rules with the id “same”.'],
    ]);
    expect(faults({ aggregate: 'sum' }).map(([path]) => path)).toEqual(['aggregate', 'aggregate']);
  });
});
