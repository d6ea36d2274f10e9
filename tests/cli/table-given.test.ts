import { describe, expect, test } from 'vitest';
import { CannotRun } from '../../src/base/index.ts';
import { givenValues } from '../../src/cli/tables/given-values.ts';
import type { FeelType } from '../../src/tables/dmn/index.ts';

function given(text: string, type: FeelType) {
  const [one] = givenValues([`x=${text}`], [{ name: 'x', label: 'X', type }]).values();
  return one;
}

function refusal(text: string, type: FeelType): string {
  try {
    given(text, type);
  } catch (error) {
    if (!(error instanceof CannotRun)) throw error;
    return `${error.message} ${error.help}`;
  }
  throw new Error(`${text} was taken`);
}

const volts: FeelType = { kind: 'number', unit: 'V' };

describe('values as they are typed', () => {
  test.each<[string, FeelType, unknown, number | undefined]>([
    ['3.9', volts, 3.9, undefined],
    ['.5', volts, 0.5, undefined],
    ['-2', volts, -2, undefined],
    ['−2', volts, -2, undefined],
    ['+2 V', volts, 2, undefined],
    ['3.9±0.15', volts, 3.9, 0.15],
    ['3.9 +- 0.15 V', volts, 3.9, 0.15],
    ['-3.9+/-.15', volts, -3.9, 0.15],
    ['3.9±0', volts, 3.9, 0],
    ['null', volts, null, undefined],
    ['Yes', { kind: 'yes-no' }, true, undefined],
    ['FALSE', { kind: 'yes-no' }, false, undefined],
    ['2026-03-14', { kind: 'date' }, '2026-03-14', undefined],
    ['date("2026-03-14")', { kind: 'date' }, '2026-03-14', undefined],
    ['a=b', { kind: 'text' }, 'a=b', undefined],
    ['"null"', { kind: 'text' }, 'null', undefined],
    ["'fixed'", { kind: 'choice', values: ['fixed', 'none'] }, 'fixed', undefined],
    ['3', { kind: 'any' }, 3, undefined],
    ['3±1', { kind: 'any' }, 3, 1],
    ['"3"', { kind: 'any' }, '3', undefined],
    ['yes', { kind: 'any' }, true, undefined],
    ['fixed', { kind: 'any' }, 'fixed', undefined],
    ['{age: 40}', { kind: 'structure', name: 'tApplicant' }, { age: 40 }, undefined],
    ['{"age": 40, "name": "x"}', { kind: 'any' }, { age: 40, name: 'x' }, undefined],
    ['[1, 2]', { kind: 'any' }, [1, 2], undefined],
  ])('%s as %o', (text, type, value, uncertainty) => {
    expect(given(text, type)).toEqual({ value, uncertainty });
  });

  test.each<[string, FeelType, string]>([
    ['14:30:00', { kind: 'time' }, '14:30:00'],
    ['2026-03-14T14:30:00', { kind: 'date and time' }, '2026-03-14T14:30:00'],
    ['P1DT2H', { kind: 'duration' }, 'P1DT2H'],
    ['2026-03-14', { kind: 'any' }, '2026-03-14'],
  ])('%s as %o is one of FEEL’s own', (text, type, json) => {
    expect(JSON.parse(JSON.stringify(given(text, type)?.value))).toBe(json);
  });

  test.each<[string, FeelType, string]>([
    ['1e3', volts, '“x” cannot be “1e3”. It is a number in V'],
    ['1.2.3', volts, '“x” cannot be “1.2.3”. It is a number in V: x=3.9, or x=3.9±0.15.'],
    ['NaN', volts, '“x” cannot be “NaN”. It is a number in V'],
    ['1,200.5', volts, '“x” cannot be “1,200.5”. It is a number in V'],
    ['3.5', { kind: 'number', whole: true }, '“x” cannot be “3.5”. It is a whole number.'],
    ['3.4±0.1', { kind: 'number', whole: true }, '“x” cannot be “3.4±0.1”. It is a whole number.'],
    ['-1', { kind: 'number', least: 0 }, '“x” cannot be “-1”. It is at least 0.'],
    [
      '2026-02-30',
      { kind: 'date' },
      '“x” cannot be “2026-02-30”. It is a date, written year-month-day: 2026-03-14.',
    ],
    ['2026-03-14±1', { kind: 'date' }, '“x” cannot be “2026-03-14±1”. It is a date'],
    ['soon', { kind: 'time' }, '“x” cannot be “soon”. It is a time: 14:30:00.'],
    [
      '1',
      { kind: 'structure', name: 'tApplicant' },
      '“x” cannot be “1”. It is made of parts (tApplicant). Write its parts in braces:',
    ],
  ])('%s as %o is refused', (text, type, message) => {
    expect(refusal(text, type)).toContain(message);
  });
});
