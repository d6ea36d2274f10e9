import { describe, expect, test } from 'vitest';
import { compare, slipsOfLatest } from '../../src/codes/alignment.ts';
import { generalDisplay } from '../../src/codes/confusion.ts';
import { misreadRates } from '../../src/codes/constants.ts';
import { lettersAndDigits, pick, randomNumbers } from './sample.ts';

function slips(typed: string, code: string): string[] {
  compare(typed, code, misreadRates, generalDisplay);
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

describe('leaving out what cannot reach a bound', () => {
  test('loses about as much as the bound at most', () => {
    const random = randomNumbers(3);
    const bound = 1e3;
    let above = 0;
    let most = 0;
    for (let round = 0; round < 5000; round += 1) {
      const code = Array.from({ length: 6 }, () => pick('AB0123', random)).join('');
      const typed = Array.from(code, (c) => (random() < 0.4 ? pick('AB0123', random) : c)).join('');
      const sum = (atLeast: number) => {
        const outcome = compare(typed, code, misreadRates, generalDisplay, atLeast);
        return outcome.complete + outcome.beginning;
      };
      const [all, bounded] = [sum(0), sum(bound)];
      expect(bounded).toBeLessThanOrEqual(all * (1 + 1e-12));
      if (all > 10 * bound) above += 1;
      most = Math.max(most, (all - bounded) / bound);
    }
    expect(above, 'cases well above the bound').toBeGreaterThan(100);
    expect(most, 'lost at most, in bounds').toBeLessThan(3);
  });
});

describe('worked by hand', () => {
  test('everything dropped', () => {
    // Per character: no stray and dropped; at the end no stray; and no other number of leading zeros.
    const { complete } = compare('', 'KXTVW', misreadRates, generalDisplay);
    expect(complete / (0.98 * (0.998 * 0.005) ** 5 * 0.998)).toBeCloseTo(1, 12);
  });
  test('a digraph at the start, the bound so high that nothing else is left', () => {
    const typed = ['M4XTV', 'RN4XTV'] as const;
    const { complete } = compare(...typed, misreadRates, generalDisplay);
    const bounded = compare(...typed, misreadRates, generalDisplay, complete / 2).complete;
    expect(bounded / complete).toBeGreaterThan(0.98);
    // Seen as one (0.04), then four characters read right, swaps possible but at the end.
    const right = (look: number, swap: number) => 1 - 0.01 - 0.005 - 0.005 - look - swap;
    const byHand = 0.98 * 0.04 * right(0, 0.004) ** 3 * right(0, 0) * 0.998 ** 6 * 37 ** 5;
    expect(bounded / byHand).toBeCloseTo(1, 2);
  });
});

test('texts of any length are compared without overflow', () => {
  const long = lettersAndDigits.repeat(300);
  const { complete } = compare(long, long, misreadRates, generalDisplay);
  expect(Number.isFinite(complete) && complete > 0).toBe(true);
});
