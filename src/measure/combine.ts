/** Values brought together: the mean of several, and one value from several sessions. */
import {
  betweenBenchDeviation,
  consistencyTest,
  leastProbability,
  meanWeights,
  widened,
} from './consistency.ts';
import { propagate, type Term } from './propagate.ts';
import type { Quantity } from './quantity.ts';

/** The sum of values, each times its coefficient; what they share is counted once, with its sign. */
export function linear(terms: readonly Term[]): Quantity {
  const [first] = terms;
  if (!first) throw new Error('linear() needs at least one term');
  const value = terms.reduce((sum, [coefficient, one]) => sum + coefficient * one.value, 0);
  return propagate(value, first[1].unit, terms);
}

/** The plain mean of values, what they share counted once. */
export function mean(values: readonly Quantity[]): Quantity {
  return linear(values.map((one) => [1 / values.length, one]));
}

/**
 * One value from several sessions: their weighted mean (Cox 2002, procedure A), what they share counted with
 * its weight. Where they are inconsistent (χ² test), a deviation between benches is added that makes them
 * consistent (Mandel–Paule). Of many values that are `judgedTogether`, such as the points of a curve, chance
 * alone makes one in twenty look inconsistent; the test is made as much stricter (Bonferroni), as the check of
 * sessions against each other is. Bounds do not average: a bound beside exact values gives way to them, and of
 * bounds alone the first stands.
 */
export function combine(values: readonly Quantity[], judgedTogether = 1): Quantity {
  const exact = values.filter((one) => one.bound === 'exact');
  const [first] = exact.length > 0 ? exact : values;
  if (!first) throw new Error('combine() needs at least one value');
  if (exact.length < 2 || exact.some((one) => one.standardUncertainty === 0)) return first;
  const consistent = consistencyTest(exact).probability >= leastProbability / judgedTogether;
  const betweenBench = consistent ? 0 : betweenBenchDeviation(exact);
  const weights = meanWeights(widened(exact, betweenBench));
  const share = (index: number): number => weights[index] ?? 0;
  return propagate(
    exact.reduce((sum, one, index) => sum + one.value * share(index), 0),
    first.unit,
    exact.map((one, index): Term => [share(index), one]),
    [
      {
        name: 'between benches',
        standardUncertainty: betweenBench * Math.hypot(...weights),
        degreesOfFreedom: exact.length - 1,
      },
    ],
  );
}

/** Each value once, in the order of first appearance. */
export function unique<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}
