import { describe, expect, test } from 'vitest';
import { compare, slipsOfLatest } from '../../src/codes/alignment.ts';
import { antiAliased } from '../../src/codes/displays/anti-aliased.ts';
import { lettersAndDigits } from './sample.ts';

function slips(typed: string, code: string): string[] {
  compare(typed, code, antiAliased);
  return slipsOfLatest().map(({ kind, at, shown, typed: seen }) => `${kind} ${at} ${shown}>${seen}`);
}

describe('the likeliest slips', () => {
  test.each([
    ['KX4812', 'KX4812', []],
    ['KX4B12', 'KX4812', ['look-alike 3 8>B']],
    ['KX4712', 'KX4812', ['other 3 8>7']],
    ['KX412', 'KX4812', ['dropped 3 8>']],
    ['X4812', 'KX4812', ['dropped 0 K>']],
    ['KX44812', 'KX4812', ['doubled 2 4>44']],
    ['KX4V812', 'KX4812', ['added 3 >V']],
    ['KX8412', 'KX4812', ['swapped 2 48>84']],
    ['KRN12', 'KM12', ['digraph 1 M>RN']],
    ['KM12', 'KRN12', ['digraph 1 RN>M']],
    ['48123', '0048123', ['leading-zeros 0 00>']],
    ['048123', '48123', ['leading-zeros 0 >0']],
    ['7E8', '0X7E8', ['leading-zeros 0 0X>']],
    ['KX4B1Z', 'KX4812', ['look-alike 3 8>B', 'look-alike 5 2>Z']],
    ['KX48', 'KX4812', []], // a beginning is no slip
    ['KXAB', 'KX4812', ['other 2 4>A', 'look-alike 3 8>B']],
  ])('%s for %s', (typed, code, expected) => {
    expect(slips(typed, code)).toEqual(expected);
  });
});

describe('worked by hand', () => {
  test('everything dropped', () => {
    // Per character: no stray and dropped; at the end no stray; and no other number of leading zeros.
    const { complete } = compare('', 'KXTVW', antiAliased);
    expect(complete / (0.98 * (0.998 * 0.005) ** 5 * 0.998)).toBeCloseTo(1, 12);
  });
  test('a digraph at the start', () => {
    const { complete } = compare('M4XTV', 'RN4XTV', antiAliased);
    // Seen as one (0.04), then 4, X, T, V read right, swaps possible but at the end, and X taken for K, V for U or Y.
    const right = (look: number, swap: number) => 1 - 0.01 - 0.005 - 0.005 - look - swap;
    const rest = right(0, 0.004) * right(0.003, 0.004) * right(0, 0.004) * right(0.01, 0);
    const byHand = 0.98 * 0.04 * rest * 0.998 ** 6 * 37 ** 5;
    expect(complete / byHand).toBeCloseTo(1, 2);
  });
});

test('texts of any length are compared without overflow', () => {
  const long = lettersAndDigits.repeat(300);
  const { complete } = compare(long, long, antiAliased);
  expect(Number.isFinite(complete) && complete > 0).toBe(true);
});
