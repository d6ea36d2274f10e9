/** The uncertainty budget of a result, after the GUM (JCGM 100:2008). */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import type { Bound, Quantity, Unit } from './quantity.ts';

/** One line of a budget: a standard uncertainty, in the unit of the result, and its degrees of freedom. */
export interface Component {
  readonly name: string;
  readonly standardUncertainty: number;
  /** Infinity for components known from a specification (GUM G.4.2). */
  readonly degreesOfFreedom: number;
}

/** The standard uncertainty of a quantity known to lie within ± `halfWidth`, all values alike (GUM 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Combined standard uncertainty of uncorrelated components: root of the sum of squares (GUM 5.1.2). */
export function combined(components: readonly Component[]): number {
  return Math.hypot(...components.map((component) => component.standardUncertainty));
}

/** Effective degrees of freedom, ν = u_c⁴ / Σ(u_i⁴/ν_i) (Welch–Satterthwaite, GUM G.4.1). */
export function effectiveDegreesOfFreedom(components: readonly Component[]): number {
  const u = combined(components);
  const sum = components.reduce(
    (total, one) => total + one.standardUncertainty ** 4 / one.degreesOfFreedom,
    0,
  );
  return sum === 0 ? Number.POSITIVE_INFINITY : u ** 4 / sum;
}

/**
 * Coverage factor for a level of confidence: the two-sided quantile of Student's t at the effective
 * degrees of freedom, rounded down to a whole number (GUM G.4.1, note 1; G.6.4).
 */
export function coverageFactor(degreesOfFreedom: number, confidence = 0.95): number {
  const whole = Number.isFinite(degreesOfFreedom) ? Math.max(1, Math.floor(degreesOfFreedom)) : 1e9;
  return tQuantile((1 + confidence) / 2, whole);
}

/** A value with the uncertainty its budget comes to, expanded to 95 %. */
export function quantity(
  value: number,
  unit: Unit,
  components: readonly Component[],
  bound: Bound = 'exact',
): Quantity {
  const standardUncertainty = combined(components);
  const factor = coverageFactor(effectiveDegreesOfFreedom(components));
  return {
    value,
    unit,
    standardUncertainty,
    coverageFactor: factor,
    expandedUncertainty: factor * standardUncertainty,
    bound,
  };
}
