/**
 * Gap and overlap analysis against the published expectation of Apache KIE Drools’ tests of its DMN validator (four
 * rules over two numbers), recomputed by brute force.
 */
import { expect, test } from 'vitest';
import { analyseTable, gapBoxes, readTable, type Table, testText } from '../../src/tables/index.ts';

const number = { kind: 'number' } as const;
const input = (id: string) => ({ id, label: id, type: number, mayBeMissing: false });
const rules = [
  ['R1', '[0..4]', '[0..2]'],
  ['R2', '[1..3]', '[5..6]'],
  ['R3', '[2..5]', '[1..4]'],
  ['R4', '[6..7]', '[0..3]'],
] as const;
const { table } = readTable({
  name: 'Published',
  hitPolicy: 'unique',
  aggregation: undefined,
  inputs: [input('x'), input('y')],
  outputs: [{ id: 'out', label: 'Out', type: number, priorities: [], otherwise: undefined }],
  rules: rules.map(([id, ...tests], index) => ({ id, tests, results: [index] })),
}) as { readonly table: Table };

const asTests = (sets: readonly Parameters<typeof testText>[0][]): string =>
  sets.map((set, index) => testText(set, table.inputs[index] as Table['inputs'][number])).join(' ; ');

test('the missing region is the 17 published boxes', () => {
  const { boxes, complete, count } = gapBoxes(table);
  expect(boxes.map(({ sets }) => asTests(sets))).toEqual([
    '< 0 ; -',
    '[0..1) ; < 0',
    '[0..1) ; > 2',
    '[1..2) ; < 0',
    '[1..2) ; (2..5)',
    '[1..2) ; > 6',
    '[2..3] ; < 0',
    '[2..3] ; (4..5)',
    '[2..3] ; > 6',
    '(3..4] ; < 0',
    '(3..4] ; > 4',
    '(4..5] ; < 1',
    '(4..5] ; > 4',
    '(5..6) ; -',
    '[6..7] ; < 0',
    '[6..7] ; > 3',
    '> 7 ; -',
  ]);
  expect({ complete, count }).toEqual({ complete: true, count: 17 });
});

test('the one overlap is the published one', () => {
  const { overlaps, overlapCount } = analyseTable(table);
  expect(overlaps.map((one) => [...one.rules, asTests(one.box.sets)])).toEqual([
    ['R1', 'R3', '[2..4] ; [1..2]'],
  ]);
  expect(overlapCount).toBe(1);
});

test('fewer boxes than there are is said', () => {
  const { boxes, complete, count } = gapBoxes(table, { most: 5 });
  expect([boxes.length, complete, count]).toEqual([5, false, 17]);
});
