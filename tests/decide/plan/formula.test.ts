import { describe, expect, test } from 'vitest';
import { evaluate, readFormula } from '../../../src/decide/plan/formula.ts';
import { given, lookedUp, workedOut } from '../../../src/decide/plan/line.ts';
import { written } from '../../../src/decide/plan/written.ts';
import { limits, quantity } from '../../../src/measure/index.ts';

const none = (symbol: string): number => {
  throw new Error(symbol);
};

test.each([
  ['1 + 2·3', 7],
  ['10 − 4 − 3', 3],
  ['2·3^2', 18],
  ['2^3^2', 512],
  ['8/4/2', 1],
  ['−2^2', -4],
  ['(1 + 2)·3', 9],
  ['20·lg(10)', 20],
  ['√(9·4)', 6],
  ['max(0, −3, 2)', 2],
  ['10^(−20/20)', 0.1],
  ['floor(2.7) + ceil(2.1)', 5],
])('%s = %s', (text, value) => {
  expect(evaluate(readFormula(text), none)).toBeCloseTo(value, 12);
});

test('symbols take their values, subscripts and Greek letters too', () => {
  const values: Readonly<Record<string, number>> = { V_max: 4, η: 0.5, d_1: 3 };
  expect(evaluate(readFormula('V_max·η + d_1'), (symbol) => values[symbol] ?? Number.NaN)).toBe(5);
});

test.each(['(1 + 2', '1 +', '2 3', 'lg 3', 'max(1, )', '1 % 2', ')'])('“%s” is no formula', (text) => {
  expect(() => readFormula(text)).toThrow('“');
});

describe('a line', () => {
  const volts = quantity(2, 'V', [limits('meter', 0.02, 'meter')]);
  const parts = {
    id: 'power',
    symbol: 'P',
    formula: 'V^2/Z',
    given: [given('V', 'volts', volts, 'V', ['bench']), given('Z', 'load', 4, 'Ω', ['sheet'])],
    unit: 'W' as const,
  };
  test('has the value of its formula, the uncertainty that follows, and its sources', () => {
    const { result, sources } = workedOut(parts);
    expect(result.value).toBe(1);
    // dP/dV = 2·V/Z = 1 W/V.
    expect(result.standardUncertainty).toBeCloseTo(volts.standardUncertainty, 9);
    expect(result.expandedUncertainty).toBeCloseTo(volts.expandedUncertainty, 9);
    expect(sources).toEqual(['bench', 'sheet']);
  });
  test('what two values share counts once, with its sign: a common meter cancels in a ratio', () => {
    const other = quantity(4, 'V', [limits('meter', 0.04, 'meter')]);
    const ratio = workedOut({
      ...parts,
      formula: '20·lg(V/W)',
      given: [given('V', 'volts', volts, 'V'), given('W', 'others', other, 'V')],
      unit: 'dB',
    });
    expect(ratio.result.standardUncertainty).toBeLessThan(1e-6);
  });
  test('must be given what it uses, and use what it is given', () => {
    expect(() => workedOut({ ...parts, formula: 'V^2/R' })).toThrow('R is not given');
    expect(() => workedOut({ ...parts, formula: 'V^2' })).toThrow('Z is given and not used');
  });
});

test('a line is written in symbols, with its values, and with its result', () => {
  const volts = quantity(2.0004, 'V', [limits('meter', 0.02, 'meter')]);
  const line = workedOut({
    id: 'level',
    symbol: 'L_max',
    formula: '20·lg(V/V_max) + L_0·π',
    given: [
      given('V', 'volts', volts, 'V'),
      given('V_max', 'most', 1.255, 'V'),
      given('L_0', 'offset', -0.125, 'dB'),
    ],
    unit: 'dB',
  });
  expect(written(line)).toEqual({
    symbols: 'L_max = 20·lg(V/V_max) + L_0·π',
    values: '20·lg(2.000\u00a0V/1.255\u00a0V) + (−0.125\u00a0dB)·π',
    result: '3.66\u00a0dB ±\u00a00.09\u00a0dB',
  });
  const table = lookedUp({ ...line, formula: 'the next size above V' }, quantity(3, 'A', []));
  expect(written(table)).toMatchObject({ values: undefined, result: '3.00\u00a0A' });
});
