/** Do several measurements of one thing agree, and what do they come to together? */
import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf';

/** A value with its standard uncertainty. */
export interface Estimate {
  readonly value: number;
  readonly standardUncertainty: number;
}

/**
 * E_n = (x − X)/√(U_x² + U_X²), U expanded to 95 %; |E_n| ≤ 1 agrees (ISO 13528, 9.7; ISO/IEC 17043).
 * NaN where both uncertainties are 0 and the values are equal.
 */
export function normalisedError(
  a: { readonly value: number; readonly expandedUncertainty: number },
  b: { readonly value: number; readonly expandedUncertainty: number },
): number {
  return (a.value - b.value) / Math.hypot(a.expandedUncertainty, b.expandedUncertainty);
}

/** Weights of a weighted mean, (1/u²)/Σ(1/u²), which add up to 1. Every u must be above 0. */
export function meanWeights(estimates: readonly Estimate[]): number[] {
  const weights = estimates.map(({ standardUncertainty }) => 1 / standardUncertainty ** 2);
  const total = weights.reduce((sum, one) => sum + one, 0);
  return weights.map((weight) => weight / total);
}

/**
 * Weighted mean Σ(x/u²)/Σ(1/u²) with u = (Σ1/u²)^−½
 * (Cox, Metrologia 39:589, 2002, procedure A). Every u must be above 0; at least one estimate.
 */
export function weightedMean(estimates: readonly Estimate[]): Estimate {
  const weights = meanWeights(estimates);
  const total = estimates.reduce((sum, { standardUncertainty }) => sum + 1 / standardUncertainty ** 2, 0);
  return {
    value: estimates.reduce((sum, { value }, index) => sum + (weights[index] ?? 0) * value, 0),
    standardUncertainty: Math.sqrt(1 / total),
  };
}

/** χ²obs of estimates about their weighted mean, with its degrees of freedom and probability. */
export interface ConsistencyTest {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Probability of a χ² at least this large by chance; below 0.05 the estimates are inconsistent. */
  readonly probability: number;
}

/** The χ² test of Cox, Metrologia 39:589 (2002), procedure A, for at least two estimates. */
export function consistencyTest(estimates: readonly Estimate[]): ConsistencyTest {
  const mean = weightedMean(estimates).value;
  const chiSquare = estimates.reduce(
    (total, one) => total + ((one.value - mean) / one.standardUncertainty) ** 2,
    0,
  );
  const degreesOfFreedom = estimates.length - 1;
  return { chiSquare, degreesOfFreedom, probability: 1 - chiSquareCdf(chiSquare, degreesOfFreedom) };
}

/** Below this probability of χ² estimates are inconsistent (Cox 2002). */
export const leastProbability = 0.05;

/** Birge ratio √(χ²obs/(N−1)): about 1 where the uncertainties account for the scatter (from memory). */
export function birgeRatio({ chiSquare, degreesOfFreedom }: ConsistencyTest): number {
  return Math.sqrt(chiSquare / degreesOfFreedom);
}

/** Most estimates the largest consistent subset is looked for among, by enumeration. */
export const mostForSubset = 20;

/**
 * The largest consistent subset: of all subsets that pass the χ² test, the one with the most members, of
 * several as large the one with the smallest χ² (Cox, Metrologia 44:187, 2007). Gives the indices, rising.
 * @throws RangeError for more than {@link mostForSubset} estimates.
 */
export function largestConsistentSubset(estimates: readonly Estimate[]): number[] {
  const count = estimates.length;
  if (count > mostForSubset) throw new RangeError(`more than ${mostForSubset} estimates`);
  let best: { members: number[]; chiSquare: number } = { members: [], chiSquare: Number.POSITIVE_INFINITY };
  for (let size = count; size >= 1 && best.members.length === 0; size -= 1) {
    for (const members of combinations(count, size)) {
      const subset = members.flatMap((index) => estimates[index] ?? []);
      const test: ConsistencyTest =
        size === 1 ? { chiSquare: 0, degreesOfFreedom: 0, probability: 1 } : consistencyTest(subset);
      if (test.probability >= leastProbability && test.chiSquare < best.chiSquare) {
        best = { members, chiSquare: test.chiSquare };
      }
    }
  }
  return best.members;
}

/** All ways to choose `size` of `count` indices, each rising. */
function* combinations(count: number, size: number): Generator<number[]> {
  const chosen = Array.from({ length: size }, (_, index) => index);
  while (true) {
    yield [...chosen];
    let at = size - 1;
    while (at >= 0 && chosen[at] === count - size + at) at -= 1;
    if (at < 0) return;
    const next = (chosen[at] ?? 0) + 1;
    for (let index = at; index < size; index += 1) chosen[index] = next + index - at;
  }
}

/**
 * The standard deviation between benches that makes the estimates just consistent: s such that
 * Σ (x−x̄)²/(u²+s²) = N−1, x̄ weighted by 1/(u²+s²); 0 where they already are
 * (Mandel and Paule, Anal. Chem. 42:1194, 1970, from memory; recomputed with scipy).
 */
export function betweenBenchDeviation(estimates: readonly Estimate[]): number {
  const excess = (s: number): number =>
    consistencyTest(widened(estimates, s)).chiSquare - (estimates.length - 1);
  if (estimates.length < 2 || excess(0) <= 0) return 0;
  const values = estimates.map((one) => one.value);
  let low = 0;
  let high = Math.max(...values) - Math.min(...values);
  for (let halving = 0; halving < 100; halving += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Estimates with a deviation between benches, such as {@link betweenBenchDeviation}, added to each uncertainty. */
export function widened(estimates: readonly Estimate[], deviation: number): Estimate[] {
  return estimates.map(({ value, standardUncertainty }) => ({
    value,
    standardUncertainty: Math.hypot(standardUncertainty, deviation),
  }));
}
