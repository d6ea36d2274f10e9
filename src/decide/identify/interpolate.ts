/** Straight-line interpolation with an honest allowance for what lies between the points. */
import { rectangular } from '../../measure/index.ts';

export interface Knot {
  readonly x: number;
  readonly y: number;
  /** Standard uncertainty of y. */
  readonly u: number;
}

export interface Interpolated {
  readonly y: number;
  /** Standard uncertainty that comes from the knots. */
  readonly u: number;
  /** Standard uncertainty for the curve's bend between them. */
  readonly allowance: number;
}

/**
 * The value at x between knots of rising x, undefined outside them. The bend is taken from the second
 * divided differences at the two neighbours: the error of a chord is at most t·(1−t)·h²·|y″|/2, allowed half
 * as much again because a difference flattens a bend narrower than the knots, as a rectangular distribution.
 */
export function interpolate(knots: readonly Knot[], x: number): Interpolated | undefined {
  const above = knots.findIndex((knot) => knot.x >= x);
  const right = knots[above];
  if (!right) return undefined;
  if (right.x === x) return { y: right.y, u: right.u, allowance: 0 };
  const left = knots[above - 1];
  if (!left) return undefined;
  const width = right.x - left.x;
  const t = (x - left.x) / width;
  const second = Math.max(
    Math.abs(secondDerivative(knots, above - 1)),
    Math.abs(secondDerivative(knots, above)),
  );
  return {
    y: left.y + t * (right.y - left.y),
    u: Math.hypot((1 - t) * left.u, t * right.u),
    allowance: rectangular((1.5 * t * (1 - t) * width ** 2 * second) / 2),
  };
}

/** y″ at a knot from its neighbours; 0 at the ends. */
function secondDerivative(knots: readonly Knot[], at: number): number {
  const before = knots[at - 1];
  const here = knots[at];
  const after = knots[at + 1];
  if (!before || !here || !after) return 0;
  const rise = (after.y - here.y) / (after.x - here.x) - (here.y - before.y) / (here.x - before.x);
  return (2 * rise) / (after.x - before.x);
}

/**
 * The value at x between values that may change at once anywhere between their knots, such as a boost that is
 * switched off above some step: the mean is the straight line, the allowance that of a switch equally likely
 * anywhere, √(t·(1−t))·|difference|. Outside the knots the nearest value, `beyond` as far off as the nearest
 * two would carry it if they went on. Undefined where there is no knot.
 */
export function interpolateSwitched(
  knots: readonly Knot[],
  x: number,
): (Interpolated & { readonly beyond: boolean }) | undefined {
  const inside = knots.length > 0 && x >= (knots[0]?.x ?? x) && x <= (knots.at(-1)?.x ?? x);
  if (inside) {
    const above = knots.findIndex((knot) => knot.x >= x);
    const right = knots[above];
    const left = knots[above - 1];
    if (!right) return undefined;
    if (right.x === x || !left) return { y: right.y, u: right.u, allowance: 0, beyond: false };
    const t = (x - left.x) / (right.x - left.x);
    return {
      y: left.y + t * (right.y - left.y),
      u: Math.hypot((1 - t) * left.u, t * right.u),
      allowance: Math.sqrt(t * (1 - t)) * Math.abs(right.y - left.y),
      beyond: false,
    };
  }
  const [end, next] =
    x < (knots[0]?.x ?? 0) ? [knots[0], knots[1]] : [knots[knots.length - 1], knots[knots.length - 2]];
  if (!end) return undefined;
  const slope = next ? (next.y - end.y) / (next.x - end.x) : 0;
  return { y: end.y, u: end.u, allowance: Math.abs(slope * (x - end.x)), beyond: true };
}
