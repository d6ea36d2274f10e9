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

/**
 * Weighted mean Σ(x/u²)/Σ(1/u²) with u = (Σ1/u²)^−½
 * (Cox, Metrologia 39:589, 2002, procedure A). Every u must be above 0; at least one estimate.
 */
export function weightedMean(estimates: readonly Estimate[]): Estimate {
  let weights = 0;
  let sum = 0;
  for (const { value, standardUncertainty } of estimates) {
    const weight = 1 / standardUncertainty ** 2;
    weights += weight;
    sum += weight * value;
  }
  return { value: sum / weights, standardUncertainty: Math.sqrt(1 / weights) };
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
