/** Curves and bands as SVG path data. */
import { round } from './frame.ts';

export type Place = readonly [x: number, y: number];

/** Straight lines from place to place; empty without one. A single place is a dot where line ends are round. */
export function curvePath(places: readonly Place[]): string {
  const drawn = places.map(([x, y]) => `${round(x)},${round(y)}`).join('L');
  return drawn === '' ? '' : `M${drawn}${places.length === 1 ? 'Z' : ''}`;
}

/** The area between two edges that run the same way. */
export function bandPath(upper: readonly Place[], lower: readonly Place[]): string {
  return upper.length === 0 ? '' : `${curvePath([...upper, ...lower.toReversed()])}Z`;
}
