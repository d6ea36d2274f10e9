import { describe, expect, test } from 'vitest';
import {
  type Component,
  combined,
  coverageFactor,
  effectiveDegreesOfFreedom,
  rectangular,
} from '../../src/measure/index.ts';

describe('GUM (JCGM 100:2008), annex H.1: end gauge, as transcribed', () => {
  const budget: Component[] = [
    { name: 'standard', standardUncertainty: 25, degreesOfFreedom: 18 },
    { name: 'comparison', standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
    { name: 'expansion', standardUncertainty: 2.9, degreesOfFreedom: 50 },
    { name: 'temperature', standardUncertainty: 16.6, degreesOfFreedom: 2 },
  ];
  test('combined standard uncertainty 32 nm', () => {
    // From unrounded components the GUM's own figure is 31.66388; these are rounded as printed.
    expect(combined(budget)).toBeCloseTo(31.66388, 1);
    expect(Math.round(combined(budget))).toBe(32);
  });
  test('16 effective degrees of freedom, k = 2.92, U99 = 93 nm', () => {
    const degreesOfFreedom = effectiveDegreesOfFreedom(budget);
    expect(Math.floor(degreesOfFreedom)).toBe(16);
    expect(coverageFactor(degreesOfFreedom, 0.99)).toBeCloseTo(2.92, 2);
    // The GUM rounds u to 32 before it multiplies: 2.92 · 32 = 93.4.
    expect(Math.round(coverageFactor(degreesOfFreedom, 0.99) * 32)).toBe(93);
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
