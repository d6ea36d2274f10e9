/** Where a curve through measured levels crosses a level, and what that costs in uncertainty. */
import { fallenScale, leastFallenDb, raisedScale, type Scale, scaleFor } from './curve-scale.ts';
import { Polynomial } from './polynomial.ts';
import { propagate, type Term } from './propagate.ts';
import type { Quantity } from './quantity.ts';
import type { ResponsePoint } from './response.ts';
import { limits } from './uncertainty.ts';

/** A place on the curve between two measured frequencies. */
export interface CurvePlace {
  readonly hz: number;
  /** Slope there, dB an octave. */
  readonly slopeDbPerOctave: number;
  /** The level there, dB, with an allowance for the interpolation. */
  readonly level: Quantity;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

/**
 * Where the curve crosses `levelDb` between point `at` and the next: by the polynomial through the points
 * about the interval (Lagrange, over log₂ f), found by bisection. The allowance for the interpolation is a
 * share of how far the curve lies from the straight line there: an estimate of what the next higher order
 * would still move it by (tried on filter responses at third octaves).
 */
export function crossing(
  points: readonly ResponsePoint[],
  at: number,
  levelDb: number,
): CurvePlace | undefined {
  const inside = points[at];
  const outside = points[at + 1];
  if (!inside || !outside) return undefined;
  const { nodes, scale, share } = nodesAbout(points, at, levelDb);
  const levels = nodes.map(({ level }) => level.value);
  const { toLine, slope } = scale;
  const x = nodes.map(({ hz }) => Math.log2(hz));
  const curve = new Polynomial(x, levels.map(toLine));
  const wanted = toLine(levelDb);
  const [from, to] = [Math.log2(inside.hz), Math.log2(outside.hz)];
  const sign = Math.sign(inside.level.value - levelDb) || 1;
  let [low, high] = [from, to];
  for (let halving = 0; halving < 32; halving += 1) {
    const middle = (low + high) / 2;
    if (sign * (curve.at(middle) - wanted) > 0) low = middle;
    else high = middle;
  }
  const where = (low + high) / 2;
  const t = (where - from) / (to - from);
  const straightDb = (1 - t) * inside.level.value + t * outside.level.value;
  const perLine = 1 / slope(levelDb);
  // What should be a straight line past a corner, and is not, tells of more than one filter at work.
  const departureDb = scale === fallenScale ? Math.abs((curve.straightAt(where) - wanted) * perLine) : 0;
  const terms = curve
    .weightsAt(where)
    .flatMap((weight, index): Term[] =>
      nodes[index] ? [[weight * slope(levels[index] ?? 0) * perLine, nodes[index].level]] : [],
    );
  return {
    hz: 2 ** where,
    slopeDbPerOctave: perLine * curve.slopeAt(where),
    level: propagate(levelDb, 'dB', terms, [
      limits('interpolation', share * Math.abs(straightDb - levelDb) + departureDb),
    ]),
    readings: [...new Set([...inside.readings, ...outside.readings])],
    sources: [...new Set([...inside.sources, ...outside.sources])],
  };
}

/** The points a crossing is found through, the scale they allow, and the share of bend to allow for. */
function nodesAbout(
  points: readonly ResponsePoint[],
  at: number,
  levelDb: number,
): { nodes: readonly ResponsePoint[]; scale: Scale; share: number } {
  const four = points.slice(Math.max(0, at - 1), at + 3);
  const fallen = points.slice(at, at + 3).filter(({ level }) => level.value <= leastFallenDb);
  if (levelDb < leastFallenDb && fallen.length >= 2)
    return { nodes: fallen, scale: fallenScale, share: 1 / 16 };
  const scale = scaleFor([...four.map(({ level }) => level.value), levelDb]);
  return { nodes: four, scale, share: scale === raisedScale ? 2 / 5 : 1 / 6 };
}
