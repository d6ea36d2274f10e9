/** Key comparison CCQM-K30, lead in wine (Hearn et al., Metrologia 45 (2008) 08001), mg/kg. */
import { describe, expect, test } from 'vitest';
import {
  betweenBenchDeviation,
  birgeRatio,
  combine,
  consistencyTest,
  largestConsistentSubset,
  normalisedError,
  quantity,
  weightedMean,
  widened,
} from '../../src/measure/index.ts';

/** The published results, `[value, U, k]`, laboratories 1 to 11. */
const published = [
  [1.62, 0.088, 2],
  [2.893, 0.044, 2.13],
  [2.936, 0.025, 2],
  [2.94, 0.033, 2],
  [2.96, 0.08, 2.4],
  [2.98, 0.2, 1.99],
  [3.0, 0.1, 2],
  [3.001, 0.136, 2],
  [3.07, 0.17, 2],
  [3.13, 0.12, 2],
  [7.71, 1.98, 2],
] as const;

const laboratories = published.map(([value, expandedUncertainty, k]) => ({
  value,
  expandedUncertainty,
  standardUncertainty: expandedUncertainty / k,
}));

describe('weighted mean and χ² test (Cox, Metrologia 39:589, 2002, procedure A)', () => {
  test.each([
    ['all 11', 0, 11, 2.894377174230711, 0.00817436206598515, 912.474034329197],
    ['laboratories 2 to 10', 1, 10, 2.939597266711811, 0.008319483037083741, 20.406712421089836],
    ['laboratories 2 to 9', 1, 9, 2.935864812927486, 0.008400630457846621, 10.138970686084132],
  ] as const)('%s', (_, from, to, mean, u, chiSquare) => {
    const some = laboratories.slice(from, to);
    expect(weightedMean(some).value).toBeCloseTo(mean, 12);
    expect(weightedMean(some).standardUncertainty).toBeCloseTo(u, 14);
    expect(consistencyTest(some).chiSquare).toBeCloseTo(chiSquare, 9);
    expect(consistencyTest(some).degreesOfFreedom).toBe(to - from - 1);
  });
  test('probabilities', () => {
    expect(consistencyTest(laboratories).probability).toBeLessThan(1e-12);
    expect(consistencyTest(laboratories.slice(1, 10)).probability).toBeCloseTo(0.008902109055868, 12);
    expect(consistencyTest(laboratories.slice(1, 9)).probability).toBeCloseTo(0.1808339700800668, 12);
  });
});

describe('χ² at the 0.95 quantile has a probability of 0.05 (quantiles recomputed with scipy)', () => {
  test.each([
    [1, 3.841458820694124],
    [7, 14.067140449340169],
    [10, 18.307038053275146],
  ])('ν = %s: %s', (degreesOfFreedom, quantile) => {
    // Two estimates as far either side of the others as makes χ² the quantile.
    const beside = Math.sqrt(quantile / 2);
    const values = [beside, -beside, ...Array<number>(degreesOfFreedom - 1).fill(0)];
    const result = consistencyTest(values.map((value) => ({ value, standardUncertainty: 1 })));
    expect(result.degreesOfFreedom).toBe(degreesOfFreedom);
    expect(result.chiSquare).toBeCloseTo(quantile, 12);
    expect(result.probability).toBeCloseTo(0.05, 12);
  });
});

describe('one value from several sessions is made the same way', () => {
  const measured = (from: number, to: number) =>
    laboratories
      .slice(from, to)
      .map(({ value, standardUncertainty }) =>
        quantity(value, 'V', [
          { name: 'as published', standardUncertainty, degreesOfFreedom: Number.POSITIVE_INFINITY },
        ]),
      );
  test('laboratories 2 to 9 agree: their weighted mean (Cox 2002, procedure A)', () => {
    const together = combine(measured(1, 9));
    expect(together.value).toBeCloseTo(2.935864812927486, 12);
    expect(together.standardUncertainty).toBeCloseTo(0.008400630457846621, 14);
  });
  test('laboratories 2 to 10 do not: mean and u widened by Mandel and Paule’s deviation (scipy)', () => {
    const together = combine(measured(1, 10));
    expect(together.value).toBeCloseTo(2.9684771155374374, 10);
    expect(together.standardUncertainty).toBeCloseTo(0.022747363715258696, 10);
  });
});

describe('E_n (ISO 13528, 9.7) against the published reference value 2.99 ± 0.06', () => {
  const reference = { value: 2.99, expandedUncertainty: 0.06 };
  test.each([
    [2, -1.303688],
    [3, -0.830769],
    [5, -0.3],
    [9, 0.44376],
    [10, 1.043498],
  ])('laboratory %s', (laboratory, expected) => {
    const result = laboratories[laboratory - 1];
    expect(result && normalisedError(result, reference)).toBeCloseTo(expected, 6);
  });
});

describe('what to do with estimates that do not agree', () => {
  test.each([
    ['all 11', 0, 11, 9.55235067577189],
    ['laboratories 2 to 10', 1, 10, 1.597134638230675],
    ['laboratories 2 to 9', 1, 9, 1.203505041005772],
  ] as const)('Birge ratio of %s (recomputed independently)', (_, from, to, ratio) => {
    expect(birgeRatio(consistencyTest(laboratories.slice(from, to)))).toBeCloseTo(ratio, 11);
  });

  test('the largest consistent subset is laboratories 2 to 9 (Cox, Metrologia 44:187, 2007)', () => {
    expect(largestConsistentSubset(laboratories).map((index) => index + 1)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('of subsets as large the one with the smallest χ² is taken; one alone is always consistent', () => {
    const estimate = (value: number) => ({ value, standardUncertainty: 0.1 });
    expect(largestConsistentSubset([estimate(0), estimate(5), estimate(0.1), estimate(5.2)])).toEqual([0, 2]);
    expect(largestConsistentSubset([estimate(3)])).toEqual([0]);
  });

  test('more than can be enumerated is refused, not guessed', () => {
    expect(() => largestConsistentSubset(Array(21).fill({ value: 1, standardUncertainty: 1 }))).toThrow(
      RangeError,
    );
  });

  // The root of the Mandel–Paule equation found by scipy.optimize.brentq.
  test.each([
    [0, 11, 1.2358036412816773, 3.1322399621235184, 0.3797843262217839],
    [1, 10, 0.05201195987382262, 2.9684771155374374, 0.022747363715258696],
  ])('Mandel–Paule deviation, mean and u of laboratories %s to %s', (from, to, s, mean, u) => {
    const some = laboratories.slice(from, to);
    const result = weightedMean(widened(some, betweenBenchDeviation(some)));
    expect(betweenBenchDeviation(some)).toBeCloseTo(s, 10);
    expect(result.value).toBeCloseTo(mean, 10);
    expect(result.standardUncertainty).toBeCloseTo(u, 10);
  });

  test('estimates that agree need no deviation between benches', () => {
    expect(betweenBenchDeviation(laboratories.slice(2, 5))).toBe(0);
  });
});
