/** Where a curve through measured levels crosses a level, and what that costs in uncertainty. */
import { beyondChance, curveThrough } from './curve.ts';
import { fallenScale, leastFallenDb, plainScale, raisedScale, type Scale, scaleFor } from './curve-scale.ts';
import type { Polynomial } from './polynomial.ts';
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

/** Between points more than an octave apart (by any rounding of frequencies) a curve may do anything. */
const mostOctaves = 1.05;

/** A line that needs no more allowance than this, dB, is taken without looking for a better curve. */
const enoughDb = 0.05;

/**
 * Where the curve crosses `levelDb` between point `at` and the next: past a corner on the line through the
 * fallen points, else on the polynomial through the points about the interval (Lagrange, over log₂ f), as
 * the one or the other needs the smaller allowance. Undefined where the points are too far apart for the
 * bend of the curve, so that nothing tells where between the two it crosses.
 */
export function crossing(
  points: readonly ResponsePoint[],
  at: number,
  levelDb: number,
): CurvePlace | undefined {
  const inside = points[at];
  const outside = points[at + 1];
  if (!inside || !outside) return undefined;
  const interval: Interval = {
    points,
    at,
    levelDb,
    inside,
    outside,
    octaves: Math.abs(Math.log2(outside.hz / inside.hz)),
  };
  const line = levelDb < leastFallenDb ? fallenLine(interval) : undefined;
  const laid = line && line.allowanceDb <= enoughDb ? line : finer(line, curveAbout(interval));
  const { scale, curve, where, allowanceDb } = laid;
  const slopeDbPerOctave = curve.slopeAt(where) / scale.slope(levelDb);
  const halfDb = (Math.abs(slopeDbPerOctave) * interval.octaves) / 2;
  if (interval.octaves > mostOctaves || allowanceDb > halfDb) return undefined;
  const terms = termsOf(laid, levelDb);
  const ownDb = laid === line ? beyondChance(allowanceDb, propagate(levelDb, 'dB', terms)) : allowanceDb;
  return {
    hz: 2 ** where,
    slopeDbPerOctave,
    level: propagate(levelDb, 'dB', terms, [limits('interpolation', ownDb)]),
    readings: [...new Set([...inside.readings, ...outside.readings])],
    sources: [...new Set([...inside.sources, ...outside.sources])],
  };
}

/** Two neighbouring points between which a curve crosses a level. */
interface Interval {
  readonly points: readonly ResponsePoint[];
  readonly at: number;
  readonly levelDb: number;
  readonly inside: ResponsePoint;
  readonly outside: ResponsePoint;
  readonly octaves: number;
}

/** A curve laid through some of the points, and where it crosses the level. */
interface Laid {
  readonly nodes: readonly ResponsePoint[];
  readonly scale: Scale;
  readonly curve: Polynomial;
  /** log₂ of the frequency. */
  readonly where: number;
  /** How far the true curve may lie off there, dB: shares tried on filters read every third octave to every octave. */
  readonly allowanceDb: number;
}

/** The levels at the nodes, with how far the curve moves with each where it crosses. */
function termsOf({ nodes, scale, curve, where }: Laid, levelDb: number): Term[] {
  const perLine = 1 / scale.slope(levelDb);
  return curve
    .weightsAt(where)
    .flatMap((weight, index): Term[] =>
      nodes[index] ? [[weight * scale.slope(nodes[index].level.value) * perLine, nodes[index].level]] : [],
    );
}

function finer(one: Laid | undefined, other: Laid): Laid {
  return one && one.allowanceDb <= other.allowanceDb ? one : other;
}

/**
 * The line past a corner through two or three fallen points; undefined for fewer. It holds for one filter
 * that falls from the level of 1 kHz. How far it misses the next point inwards, and how far it is from
 * straight, tells of others at work, such as a boost above the corner.
 */
function fallenLine(interval: Interval): Laid | undefined {
  const { points, at, levelDb } = interval;
  const nodes = points.slice(at, at + 3).filter(({ level }) => level.value <= leastFallenDb);
  const [first] = nodes;
  const inward = first && points[points.indexOf(first) - 1];
  if (nodes.length < 2 || !inward) return undefined;
  const scale = fallenScale;
  const curve = curveThrough(nodes, scale);
  const where = crossed(interval, curve, scale);
  const bentDb = Math.abs((curve.straightAt(where) - scale.toLine(levelDb)) / scale.slope(levelDb));
  const missedDb = Math.abs(scale.toLevel(curve.at(Math.log2(inward.hz))) - inward.level.value);
  const allowanceDb =
    bentDb + offChordDb(interval, where) / 16 + (missedDb / 3) * thirdOctaves(interval) ** 2;
  return { nodes, scale, curve, where, allowanceDb };
}

/** The polynomial through two points each side, or the nearest four at an end, on the scale that fits better. */
function curveAbout(interval: Interval): Laid {
  const { points, at, levelDb } = interval;
  const from = Math.max(0, Math.min(at - 1, points.length - 4));
  const nodes = points.slice(from, from + 4);
  const scale = scaleFor([...nodes.map(({ level }) => level.value), levelDb]);
  const one = curveOn(interval, from, nodes, scale);
  return scale === raisedScale ? finer(one, curveOn(interval, from, nodes, plainScale)) : one;
}

/**
 * The polynomial through `nodes`, which begin at point `from`. What it may be off by is estimated from what a
 * point fewer and a point more would move it by, and from its bend within the interval.
 */
function curveOn(interval: Interval, from: number, nodes: readonly ResponsePoint[], scale: Scale): Laid {
  const { points, levelDb } = interval;
  const curve = curveThrough(nodes, scale);
  const where = crossed(interval, curve, scale);
  const offDb = (some: readonly ResponsePoint[]): number =>
    (curveThrough(some, scale).at(where) - scale.toLine(levelDb)) / scale.slope(levelDb);
  const fewerDb = Math.abs(offDb(nodes.slice(0, -1)) - offDb(nodes.slice(1)));
  const further = [points[from - 1], points[from + 4]].filter((point) => point !== undefined);
  const onScale = further.filter(({ level }) => scale !== raisedScale || scaleFor([level.value]) === scale);
  const moreDb = Math.max(0, ...onScale.map((point) => Math.abs(offDb([...nodes, point]))));
  const sumDb = fewerDb / 2 + moreDb + offChordDb(interval, where) / 6;
  return { nodes, scale, curve, where, allowanceDb: sumDb * thirdOctaves(interval) };
}

/** Where within the interval a curve crosses the level, by bisection; log₂ of the frequency. */
function crossed({ inside, outside, levelDb }: Interval, curve: Polynomial, scale: Scale): number {
  const wanted = scale.toLine(levelDb);
  const sign = Math.sign(inside.level.value - levelDb) || 1;
  let [low, high] = [Math.log2(inside.hz), Math.log2(outside.hz)];
  for (let halving = 0; halving < 32; halving += 1) {
    const middle = (low + high) / 2;
    if (sign * (curve.at(middle) - wanted) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How far the straight line between the two points lies from the level, dB, where the curve crosses it. */
function offChordDb({ inside, outside, levelDb }: Interval, where: number): number {
  const t = (where - Math.log2(inside.hz)) / Math.log2(outside.hz / inside.hz);
  return Math.abs((1 - t) * inside.level.value + t * outside.level.value - levelDb);
}

/** How far apart the points are there, in third octaves: the interval or the one inwards of it, at least one. */
function thirdOctaves({ points, at, inside, octaves }: Interval): number {
  const before = points[at - 1];
  const octavesBefore = before ? Math.abs(Math.log2(inside.hz / before.hz)) : 0;
  return Math.max(1, 3 * octaves, 3 * octavesBefore);
}
