/** Reading a unary test into a set, held against what the FEEL library itself says of values. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feelValue, testHolds } from '../../src/tables/evaluate.ts';
import type { ValueType } from '../../src/tables/index.ts';
import { daysOf } from '../../src/tables/sets/days.ts';
import { readTest } from '../../src/tables/sets/read-test.ts';
import { holds } from '../../src/tables/sets/value-set.ts';

const number: ValueType = { kind: 'number' };
const choice: ValueType = { kind: 'choice', values: ['a', 'b', 'c'] };

/** A simple unary test on whole numbers, from -3 to 3. */
const end = fc.integer({ min: -3, max: 3 });
const simple = fc.oneof(
  fc.tuple(fc.constantFrom('<', '<=', '>', '>=', '=', '!='), end).map(([op, value]) => `${op} ${value}`),
  end.map(String),
  fc
    .tuple(fc.constantFrom('[', '(', ']'), end, end, fc.constantFrom(']', ')', '['))
    .filter(([open, low, high, close]) => low < high || (low === high && open === '[' && close === ']'))
    .map(([open, low, high, close]) => `${open}${low}..${high}${close}`),
  fc.constant('null'),
);
const numberTest = fc.oneof(
  fc.constant('-'),
  fc.array(simple, { minLength: 1, maxLength: 3 }).map((all) => all.join(', ')),
  fc.array(simple, { minLength: 1, maxLength: 3 }).map((all) => `not(${all.join(', ')})`),
);
const choiceTest = fc
  .tuple(fc.boolean(), fc.array(fc.constantFrom('"a"', '"b"', '"c"', 'null'), { minLength: 1, maxLength: 3 }))
  .map(([not, all]) => (not ? `not(${all.join(', ')})` : all.join(', ')));

describe('a set holds what the FEEL library lets through', () => {
  test('numbers and values not known', () => {
    fc.assert(
      fc.property(numberTest, (text) => {
        const { set } = readTest(text, number);
        if (!set) throw new Error(`not read: ${text}`);
        for (let value = -4; value <= 4; value += 0.5) {
          expect(holds(set, value), `${text} of ${value}`).toBe(testHolds(text, value, {}));
        }
        expect(holds(set, null), `${text} of null`).toBe(testHolds(text, null, {}));
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  test('choices', () => {
    fc.assert(
      fc.property(choiceTest, (text) => {
        const { set } = readTest(text, choice);
        if (!set) throw new Error(`not read: ${text}`);
        for (const value of ['a', 'b', 'c', null]) {
          expect(holds(set, value), `${text} of ${value}`).toBe(testHolds(text, value, {}));
        }
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  test('yes and no', () => {
    for (const text of ['true', 'false', 'not(true)', 'null', 'true, null', '-', '= false', '!= true']) {
      const { set } = readTest(text, { kind: 'yes-no' });
      for (const value of [true, false, null]) {
        expect(set && holds(set, value), `${text} of ${value}`).toBe(testHolds(text, value, {}));
      }
    }
  });

  test('dates', () => {
    const type: ValueType = { kind: 'date' };
    const tests = [
      'date("2026-03-14")',
      '< date("2026-03-14")',
      '[date("2026-03-14")..date("2026-03-20"))',
      'not(>= @"2026-03-14")',
    ];
    for (const text of tests) {
      const { set } = readTest(text, type);
      for (const day of ['2026-03-13', '2026-03-14', '2026-03-15', '2026-03-20']) {
        const found = set && holds(set, daysOf(day) ?? null);
        expect(found, `${text} of ${day}`).toBe(testHolds(text, feelValue(day, type), {}));
      }
    }
  });
});

describe('what cannot be read is told in words', () => {
  const told = (text: string, type: ValueType = number): string | undefined =>
    readTest(text, type).fault?.message;

  test.each([
    ['', 'This test is empty.'],
    ['<', '“<” ends too early.'],
    ['< 4 V', '“< 4 V” cannot be read from “V” on.'],
    ['[3..1]', 'No value lies in “[3..1]”.'],
    ['(3..3)', 'No value lies in “(3..3)”.'],
    ['1e3', '“1e3” is no number as tables write them.'],
    ['"loud"', '“"loud"” does not fit this column: it holds numbers.'],
  ])('%s', (text, message) => {
    expect(told(text)).toBe(message);
  });

  test('a date that is none', () => {
    expect(told('< date("2026-02-30")', { kind: 'date' })).toBe('date("2026-02-30") is no date.');
  });

  test('an order of choices', () => {
    expect(told('< "b"', choice)).toBe('“< "b"” asks for an order, but this column has none.');
  });

  test('an expression is sound, but no simple test', () => {
    expect(readTest('? > 3 and ? < 5', number).beyond).toBe('? > 3 and ? < 5');
  });
});
