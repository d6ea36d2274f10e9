import { describe, expect, test } from 'vitest';
import { coverageFactor, Gathered, rectangular } from '../../src/measure/index.ts';

describe('GUM (JCGM 100:2008), annex H.1: end gauge, as transcribed', () => {
  const budget = new Gathered();
  for (const [standardUncertainty, degreesOfFreedom] of [
    [25, 18],
    [9.7, 25.6],
    [2.9, 50],
    [16.6, 2],
  ] as const) {
    budget.part(standardUncertainty, degreesOfFreedom);
  }
  test('combined standard uncertainty 32 nm', () => {
    // From unrounded components the GUM's own figure is 31.66388; these are rounded as printed.
    expect(budget.standardUncertainty).toBeCloseTo(31.66388, 1);
    expect(Math.round(budget.standardUncertainty)).toBe(32);
  });
  test('16 effective degrees of freedom, k = 2.92, U99 = 93 nm', () => {
    expect(Math.floor(budget.degreesOfFreedom)).toBe(16);
    expect(coverageFactor(budget.degreesOfFreedom, 0.99)).toBeCloseTo(2.92, 2);
    // The GUM rounds u to 32 before it multiplies: 2.92 · 32 = 93.4.
    expect(Math.round(coverageFactor(budget.degreesOfFreedom, 0.99) * 32)).toBe(93);
  });
});

describe('coverage factors', () => {
  // Student t at 0.975, recomputed with scipy.
  test.each([
    [5, 2.5705818356363146],
    [10, 2.228138851986274],
  ])('with %s degrees of freedom k is %s', (degreesOfFreedom, k) => {
    expect(coverageFactor(degreesOfFreedom)).toBeCloseTo(k, 12);
  });
  test.each([[Number.POSITIVE_INFINITY], [1e12], [1e17], [1e300]])(
    'with %s it is that of the normal distribution, 1.96',
    (many) => {
      expect(coverageFactor(many)).toBeCloseTo(1.959964, 6);
    },
  );
});

test('a rectangular limit a is a standard uncertainty of a/√3 (GUM 4.3.7)', () => {
  expect(rectangular(1)).toBeCloseTo(0.5773502692, 10);
});
