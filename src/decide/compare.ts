/** Holds a value with its uncertainty against a limit. */
import type { Quantity } from '../measure/index.ts';

/** Where a value lies against a limit, its expanded uncertainty counted in. */
export type Side = 'below' | 'above' | 'borderline';

/**
 * `below` where even the top of the interval is at most the limit, `above` where even its bottom exceeds
 * it, `borderline` where the limit lies inside. A bound (`at most 20 Hz`) decides on its own side only.
 */
export function sideOf(value: Quantity, limit: number): Side {
  const low = value.bound === 'at-most' ? Number.NEGATIVE_INFINITY : value.value - value.expandedUncertainty;
  const high =
    value.bound === 'at-least' ? Number.POSITIVE_INFINITY : value.value + value.expandedUncertainty;
  if (high <= limit) return 'below';
  return low > limit ? 'above' : 'borderline';
}
