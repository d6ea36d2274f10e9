/** Tests of decision tables in words. */

import { expect, test } from 'vitest';
import { gridOf } from '../../src/tables/grid/cut-table.ts';
import { readTable, type TableInput, type ValueType } from '../../src/tables/index.ts';
import { anyWords, readingRule, setOfPieces, setWords, valueWords } from '../../src/views/table-words.ts';
import { orList } from '../../src/words/index.ts';
import { demoAnswers } from './sample.ts';

const volts: ValueType = { kind: 'number', unit: 'V', least: 0 };
const words = (text: string, type: ValueType, mayBeMissing = false): string => {
  const input: TableInput = { id: 'it', label: 'It', type, mayBeMissing };
  const { table, faults } = readTable({
    name: 'One test',
    hitPolicy: 'unique',
    aggregation: undefined,
    inputs: [input],
    outputs: [{ id: 'out', label: 'Out', type: { kind: 'text' }, priorities: [], otherwise: undefined }],
    rules: [{ id: 'only', tests: [text], results: ['x'] }],
  });
  expect(faults).toEqual([]);
  const set = table?.rules[0]?.cells[0]?.set;
  if (!set) throw new Error(`“${text}” is no simple test`);
  return setWords(set, input);
};

test.each([
  ['> 4.2', 'over 4.2\u00a0V'],
  ['>= 4', '4\u00a0V or more'],
  ['< 1', 'under 1\u00a0V'],
  ['<= 4', '4\u00a0V or less'],
  ['[1..8]', '1\u00a0V to 8\u00a0V'],
  ['[4..8)', 'from 4\u00a0V to under 8\u00a0V'],
  ['(4..8]', 'over 4\u00a0V to 8\u00a0V'],
  ['3', '3\u00a0V'],
  ['< 1, > 8', 'under 1\u00a0V or over 8\u00a0V'],
  ['not([1..8])', 'under 1\u00a0V or over 8\u00a0V'],
  ['-', anyWords()],
])('volts: %s is “%s”', (text, expected) => {
  expect(words(text, volts)).toBe(expected);
});

test('frequencies, steps and negative numbers are written as everywhere on the site', () => {
  expect(words('> 80', { kind: 'number', unit: 'Hz', least: 0 })).toBe('over 80\u00a0Hz');
  expect(words('<= 25', { kind: 'number', unit: 'step', whole: true, least: 0 })).toBe(
    'step\u00a025 or less',
  );
  expect(words('< -3', { kind: 'number', unit: 'dB' })).toBe('under −3\u00a0dB');
});

test('choices are listed, and what is left out is named where that is shorter', () => {
  const type: ValueType = { kind: 'choice', values: ['fixed', 'fading', 'switched', 'none'] };
  expect(words('"fading", "switched"', type)).toBe('fading or switched');
  expect(words('not("none")', type)).toBe('any but none');
  expect(words('not("none", "fixed", "fading")', type)).toBe('switched');
  expect(words('true', { kind: 'yes-no' })).toBe('yes');
  expect(words('not(true)', { kind: 'yes-no' })).toBe('no');
});

test('what was not measured is said only where a column may be missing', () => {
  expect(words('null', volts, true)).toBe('not measured');
  expect(words('not(null)', volts, true)).toBe('any, if measured');
  expect(words('> 4, null', volts, true)).toBe('over 4\u00a0V or not measured');
});

test('days are written out', () => {
  const type: ValueType = { kind: 'date' };
  expect(words('< date("2026-05-01")', type)).toBe('before 1 May 2026');
  expect(words('[date("2026-05-01")..date("2026-05-31")]', type)).toBe('1 May 2026 to 31 May 2026');
  expect(words('>= date("2026-05-01")', type)).toBe('from 1 May 2026 on');
});

test('pieces put together again read like a test, and the ends of a column are no limits', () => {
  const { table } = readTable({
    name: 'Bands',
    hitPolicy: 'unique',
    aggregation: undefined,
    inputs: [{ id: 'takes', label: 'Takes', type: { ...volts, most: 50 }, mayBeMissing: false }],
    outputs: [{ id: 'out', label: 'Out', type: { kind: 'text' }, priorities: [], otherwise: undefined }],
    rules: ['< 4', '[4..8)', '>= 8'].map((text, at) => ({ id: `r${at}`, tests: [text], results: ['x'] })),
  });
  const [cut] = table ? gridOf(table) : [];
  const [input] = table?.inputs ?? [];
  if (!cut || !input) throw new Error('no grid');
  const said = (rule: number): string => {
    const pieces = [...cut.pieces.keys()].filter((piece) => cut.passes[rule]?.[piece] === 1);
    return setWords(setOfPieces(cut, pieces), input);
  };
  expect([said(0), said(1), said(2)]).toEqual([
    'under 4\u00a0V',
    'from 4\u00a0V to under 8\u00a0V',
    '8\u00a0V or more',
  ]);
  expect(setWords(setOfPieces(cut, [...cut.pieces.keys()]), input)).toBe(anyWords());
});

test('lists in words, traits in words', () => {
  expect(orList(['a'])).toBe('a');
  expect(orList(['a', 'b', 'c'])).toBe('a, b or c');
  const type: ValueType = { kind: 'choice', values: ['amplified', 'unamplified'] };
  const entry = { id: 'system', label: 'For', holds: 'trait', trait: 'system', mayBeMissing: false } as const;
  expect(valueWords('unamplified', type, entry)).toBe('speakers');
});

test('every hit policy of the demo is explained in a sentence', async () => {
  const { base } = await demoAnswers();
  const policies = new Set([...base.tables.values()].map(({ data }) => data.hit));
  expect([...policies].sort()).toEqual(['any', 'first', 'priority', 'rule order', 'unique']);
  for (const { data } of base.tables.values()) expect(readingRule(data)).toMatch(/^[A-Z].*\.$/);
});
