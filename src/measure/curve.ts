/** A curve laid through measured levels, and what is to be allowed for what it may miss between them. */
import type { Scale } from './curve-scale.ts';
import { Polynomial } from './polynomial.ts';
import type { Quantity } from './quantity.ts';
import type { ResponsePoint } from './response.ts';

/** The polynomial through points on a scale (Lagrange), over octaves from `fromHz`. */
export function curveThrough(points: readonly ResponsePoint[], scale: Scale, fromHz = 1): Polynomial {
  return new Polynomial(
    points.map(({ hz }) => Math.log2(hz / fromHz)),
    points.map(({ level }) => scale.toLine(level.value)),
  );
}

/**
 * What an allowance, the half-width of a rectangular distribution, has to add to a result as read so that the
 * larger of the two uncertainties stands. An allowance taken from how curves through the same readings differ
 * holds their uncertainty already; and readings taken more often can only narrow what is left of both.
 */
export function beyondChance(allowance: number, read: Quantity): number {
  return Math.sqrt(Math.max(0, allowance ** 2 - 3 * read.standardUncertainty ** 2));
}
