/**
 * Hit policies on worked tables. What each policy does is as transcribed from OMG DMN in the public tracker of Apache KIE
 * (DROOLS-1970: the single-hit policies and both orders word by word) and, for aggregation, from DMN 1.1, 10.3.4.6. The
 * numbers of clauses of DMN 1.3, the tables after the standard’s own figures, defaults, and what is said of no hit are
 * from memory of the text.
 */
import { describe, expect, test } from 'vitest';
import {
  type Aggregation,
  evaluateTable,
  type Given,
  type HitPolicy,
  readTable,
  type Table,
  type TableInput,
  type TableOutput,
  type Value,
  type ValueType,
} from '../../src/tables/index.ts';

const number: ValueType = { kind: 'number' };
const text: ValueType = { kind: 'text' };
const input = (id: string, type: ValueType): TableInput => ({ id, label: id, type, mayBeMissing: true });
const output = (id: string, type: ValueType, more: Partial<TableOutput> = {}): TableOutput => ({
  id,
  label: id,
  type,
  priorities: [],
  otherwise: undefined,
  ...more,
});

function tableOf(
  hitPolicy: HitPolicy,
  inputs: readonly TableInput[],
  outputs: readonly TableOutput[],
  rows: readonly (readonly [tests: readonly string[], results: readonly Value[]])[],
  aggregation?: Aggregation,
): Table {
  const rules = rows.map(([tests, results], index) => ({ id: String(index + 1), tests, results }));
  const { table, faults } = readTable({ name: 'Worked', hitPolicy, aggregation, inputs, outputs, rules });
  if (!table) throw new Error(faults.map(({ message }) => message).join('\n'));
  return table;
}

/** The answers: of a table with one output its values, else the values of each answer in order. */
function answersTo(table: Table, given: Given): unknown[] {
  const { answers } = evaluateTable(table, given);
  return answers.map((answer) => {
    const values = Object.values(answer);
    return values.length === 1 ? values[0] : values;
  });
}

describe('single hit policies (8.2.10)', () => {
  // After the figure “Applicant Risk Rating”.
  const risk = tableOf(
    'unique',
    [input('age', number), input('history', text)],
    [output('rating', text)],
    [
      [['> 60', '"good"'], ['Medium']],
      [['> 60', '"bad"'], ['High']],
      [['[25..60]', '-'], ['Medium']],
      [['< 25', '"good"'], ['Low']],
      [['< 25', '"bad"'], ['Medium']],
    ],
  );
  test.each([
    [61, 'good', 'Medium'],
    [61, 'bad', 'High'],
    [60, 'bad', 'Medium'],
    [25, 'good', 'Medium'],
    [24, 'good', 'Low'],
    [24, 'bad', 'Medium'],
  ])('unique: no overlap, the one rule that matches: %d, %s', (age, history, rating) => {
    expect(answersTo(risk, { age, history })).toEqual([rating]);
  });

  test('unique: two rules that match are an error', () => {
    const table = tableOf(
      'unique',
      [input('x', number)],
      [output('y', number)],
      [
        [['< 5'], [1]],
        [['> 3'], [1]],
      ],
    );
    expect(evaluateTable(table, { x: 4 })).toMatchObject({
      answers: [],
      rules: ['1', '2'],
      broken: expect.stringContaining('unique'),
    });
  });

  // After the figure “Person Loan Compliance”.
  const compliance = tableOf(
    'any',
    [input('rating', text), input('card', number), input('education', number)],
    [output('compliance', text)],
    [
      [['"A"', '< 10000', '< 50000'], ['Compliant']],
      [['not("A")', '-', '-'], ['Not Compliant']],
      [['-', '>= 10000', '-'], ['Not Compliant']],
      [['-', '-', '>= 50000'], ['Not Compliant']],
    ],
  );
  test('any: several rules match with equal outputs, any of them can be used', () => {
    expect(answersTo(compliance, { rating: 'A', card: 9999, education: 49_999 })).toEqual(['Compliant']);
    const all = evaluateTable(compliance, { rating: 'B', card: 10_000, education: 50_000 });
    expect([all.answers, all.rules]).toEqual([[{ compliance: 'Not Compliant' }], ['2', '3', '4']]);
  });

  test('any: with outputs that are not equal the policy is incorrect', () => {
    const table = tableOf(
      'any',
      [input('x', number)],
      [output('y', number)],
      [
        [['< 5'], [1]],
        [['> 3'], [2]],
      ],
    );
    expect(evaluateTable(table, { x: 4 }).broken).toContain('any');
    expect(answersTo(table, { x: 3 })).toEqual([1]);
  });

  const overlapping: readonly (readonly [readonly string[], readonly Value[]])[] = [
    [['>= 18'], ['Approved']],
    [['-'], ['Declined']],
    [['>= 60'], ['Manual']],
  ];
  const ranked = output('outcome', text, { priorities: ['Declined', 'Manual', 'Approved'] });
  test('priority: the output that is first in the list of its values, not the first rule', () => {
    const table = tableOf('priority', [input('age', number)], [ranked], overlapping);
    expect(answersTo(table, { age: 70 })).toEqual(['Declined']);
    const other = { ...ranked, priorities: ['Manual', 'Approved', 'Declined'] };
    const otherTable = tableOf('priority', [input('age', number)], [other], overlapping);
    expect(answersTo(otherTable, { age: 70 })).toEqual(['Manual']);
    expect(answersTo(otherTable, { age: 20 })).toEqual(['Approved']);
    expect(answersTo(otherTable, { age: 17 })).toEqual(['Declined']);
  });

  test('priority: of compound outputs the first column decides, the next where it is equal', () => {
    const table = tableOf(
      'priority',
      [input('x', number)],
      [output('a', text, { priorities: ['high', 'low'] }), output('b', number, { priorities: [3, 2, 1] })],
      [
        [['-'], ['low', 3]],
        [['> 0'], ['high', 1]],
        [['> 1'], ['high', 2]],
      ],
    );
    expect(answersTo(table, { x: 0 })).toEqual([['low', 3]]);
    expect(answersTo(table, { x: 1 })).toEqual([['high', 1]]);
    expect(answersTo(table, { x: 2 })).toEqual([['high', 2]]);
  });

  // After the figure “Special Discount”.
  const discount = tableOf(
    'first',
    [input('order', text), input('place', text), input('customer', text)],
    [output('discount', number)],
    [
      [['"Web"', '"US"', '"Wholesaler"'], [10]],
      [['"Phone"', '-', '-'], [0]],
      [['-', '"Non-US"', '-'], [0]],
      [['-', '-', '"Retailer"'], [5]],
    ],
  );
  test('first: the first rule in the order of the table', () => {
    const at = (order: string, place: string, customer: string) =>
      answersTo(discount, { order, place, customer });
    expect(at('Web', 'US', 'Wholesaler')).toEqual([10]);
    expect(at('Web', 'US', 'Retailer')).toEqual([5]);
    expect(at('Web', 'Non-US', 'Retailer')).toEqual([0]);
    expect(at('Phone', 'US', 'Retailer')).toEqual([0]);
  });
});

describe('multiple hit policies (8.2.10)', () => {
  const rows: readonly (readonly [readonly string[], readonly Value[]])[] = [
    [['> 3.5', '>= 4', 'true'], ['20% Scholarship']],
    [['> 3.0', '-', 'true'], ['30% Loan']],
    [['> 3.0', '>= 2', 'false'], ['20% Work-On-Campus']],
    [['<= 3.0', '-', '-'], ['5% Work-On-Campus']],
  ];
  // After the figure “Student Financial Package Eligibility”.
  const inputs = [input('gpa', number), input('activities', number), input('honor', { kind: 'yes-no' })];
  test('rule order: all hits in the order of the table', () => {
    const table = tableOf('rule order', inputs, [output('package', text)], rows);
    expect(answersTo(table, { gpa: 3.6, activities: 4, honor: true })).toEqual([
      '20% Scholarship',
      '30% Loan',
    ]);
    expect(answersTo(table, { gpa: 3.1, activities: 2, honor: false })).toEqual(['20% Work-On-Campus']);
    expect(answersTo(table, { gpa: 3, activities: 9, honor: true })).toEqual(['5% Work-On-Campus']);
    expect(answersTo(table, { gpa: 3.1, activities: 1, honor: false })).toEqual([]);
  });

  test('output order: all hits, those first in the list of output values first', () => {
    const priorities = ['30% Loan', '20% Scholarship', '20% Work-On-Campus', '5% Work-On-Campus'];
    const table = tableOf('output order', inputs, [output('package', text, { priorities })], rows);
    expect(answersTo(table, { gpa: 3.6, activities: 4, honor: true })).toEqual([
      '30% Loan',
      '20% Scholarship',
    ]);
  });

  describe('collect', () => {
    const fees: readonly (readonly [readonly string[], readonly Value[]])[] = [
      [['> 1'], [10]],
      [['> 2'], [30]],
      [['> 3'], [20]],
      [['> 3'], [20]],
    ];
    const of = (aggregation: Aggregation | undefined, more: Partial<TableOutput> = {}) =>
      tableOf('collect', [input('x', number)], [output('fee', number, more)], fees, aggregation);

    test('without an operator: the list of all outputs, in any order', () => {
      expect(answersTo(of(undefined), { x: 4 }).sort()).toEqual([10, 20, 20, 30]);
      expect(answersTo(of(undefined), { x: 0 })).toEqual([]);
    });

    test.each([
      ['sum', 80, 10],
      ['min', 10, 10],
      ['max', 30, 10],
      ['count', 4, 1],
    ] as const)('%s of four and of one', (aggregation, four, one) => {
      expect(answersTo(of(aggregation), { x: 4 })).toEqual([four]);
      expect(answersTo(of(aggregation), { x: 2 })).toEqual([one]);
    });

    test('without a hit there is no sum, least or greatest, a count is 0', () => {
      for (const aggregation of ['sum', 'min', 'max'] as const) {
        expect(answersTo(of(aggregation), { x: 0 })).toEqual([]);
      }
      expect(answersTo(of('count'), { x: 0 })).toEqual([0]);
    });

    test('without a hit a default is the answer', () => {
      for (const aggregation of ['sum', 'min', 'max', 'count'] as const) {
        expect(answersTo(of(aggregation, { otherwise: 99 }), { x: 0 })).toEqual([99]);
      }
    });
  });
});

describe('default output values (8.2.10)', () => {
  test.each(['unique', 'any', 'first', 'rule order', 'collect'] as const)(
    '%s: the default where no rule matches, nothing else changed',
    (hitPolicy) => {
      const table = tableOf(
        hitPolicy,
        [input('x', number)],
        [output('y', number, { otherwise: 7 })],
        [[['> 1'], [1]]],
      );
      expect(answersTo(table, { x: 1 })).toEqual([7]);
      expect(answersTo(table, { x: 2 })).toEqual([1]);
    },
  );

  test('of compound outputs those without a default are null', () => {
    const outputs = [output('a', number, { otherwise: 7 }), output('b', text)];
    const table = tableOf('unique', [input('x', number)], outputs, [[['> 1'], [1, 'one']]]);
    expect(answersTo(table, { x: 0 })).toEqual([[7, null]]);
  });
});

describe('null (7.3.14 unary tests, 10.3.2.7 ranges and comparison with null)', () => {
  test.each([
    ['-', true],
    ['null', true],
    ['< 5', false],
    ['>= 5', false],
    ['[1..5]', false],
    ['3', false],
    ['not(null)', false],
    ['not(3)', true],
    ['3, null', true],
  ])('%s lets an unknown value through: %s', (unary, passes) => {
    const table = tableOf('unique', [input('x', number)], [output('y', number)], [[[unary], [1]]]);
    expect(answersTo(table, { x: null })).toEqual(passes ? [1] : []);
    expect(answersTo(table, {})).toEqual(passes ? [1] : []);
  });

  test('a result may be null', () => {
    const table = tableOf('unique', [input('x', number)], [output('y', number)], [[['-'], [null]]]);
    expect(answersTo(table, { x: 1 })).toEqual([null]);
  });
});
