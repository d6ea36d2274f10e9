/** The summit of a curve through measured levels, and what it costs in uncertainty. */
import { beyondChance, curveThrough } from './curve.ts';
import { plainScale, raisedScale, type Scale, scaleFor } from './curve-scale.ts';
import type { Polynomial } from './polynomial.ts';
import { propagate, type Term } from './propagate.ts';
import type { Quantity } from './quantity.ts';
import type { ResponsePoint } from './response.ts';
import { limits } from './uncertainty.ts';

export interface Summit {
  readonly hz: number;
  readonly level: Quantity;
  /** The same place as octaves from the point it was looked for about. */
  readonly octave: Quantity;
}

/**
 * The summit of the curve about point `at`. Undefined where the point is no local maximum.
 *
 * The polynomial goes through the point and two neighbours each side (Lagrange, over log₂ f; one each side
 * near an end), on the raised scale where they allow it and it fits better.
 */
export function summit(points: readonly ResponsePoint[], at: number): Summit | undefined {
  const here = points[at];
  const three = points.slice(at - 1, at + 2);
  if (!here || at < 1 || three.length < 3) return undefined;
  if (three.some(({ level }) => level.value > here.level.value)) return undefined;
  const isNearEnd = at < 2 || points.length < at + 3;
  const top = isNearEnd ? topOfThree(three, here.hz) : topOfFive(points, at);
  const result = (value: number, unit: 'dB' | 'oct', terms: readonly Term[], allowed: number): Quantity =>
    propagate(value, unit, terms, [
      limits('interpolation', beyondChance(allowed, propagate(value, unit, terms))),
    ]);
  return {
    hz: here.hz * 2 ** top.octave,
    level: result(top.levelDb, 'dB', top.levelTerms, top.allowance.levelDb),
    octave: result(top.octave, 'oct', top.octaveTerms, top.allowance.octaves),
  };
}

/** A summit with what the true one may lie beside it. */
interface Allowed extends Top {
  readonly allowance: { readonly levelDb: number; readonly octaves: number };
}

/** Through three points: the allowance is a part of the bend for the level, of the spacing for the place. */
function topOfThree(three: readonly ResponsePoint[], middleHz: number): Allowed {
  const top = topOf(three, middleHz, scaleFor(three.map(({ level }) => level.value)));
  const bendDb = three.reduce((sum, { level }, index) => sum + (index === 1 ? -2 : 1) * level.value, 0);
  const octaves = Math.log2((three[2]?.hz ?? middleHz) / (three[0]?.hz ?? middleHz)) / 2;
  return { ...top, allowance: { levelDb: Math.abs(bendDb) / 60, octaves: octaves / 10 } };
}

/** Through five points: on the scale that needs the smaller allowance. */
function topOfFive(points: readonly ResponsePoint[], at: number): Allowed {
  const scale = scaleFor(points.slice(at - 2, at + 3).map(({ level }) => level.value));
  const one = topOnScale(points, at, scale);
  if (scale !== raisedScale) return one;
  const other = topOnScale(points, at, plainScale);
  return other.allowance.levelDb < one.allowance.levelDb ? other : one;
}

/**
 * The summit on one scale. Its allowance is a share of what other neighbours would move it by: leaving an outer
 * one out, and a further one. The shares were tried on filters read every third octave: boosts alone, above a
 * high-pass, on a shelf.
 */
function topOnScale(points: readonly ResponsePoint[], at: number, scale: Scale): Allowed {
  const middleHz = points[at]?.hz ?? 0;
  const top = topOf(points.slice(at - 2, at + 3), middleHz, scale);
  const by = (from: number, to: number): Moved =>
    movedBy(points.slice(Math.max(0, from), to), top, middleHz, scale);
  const fewer = [by(at - 2, at + 2), by(at - 1, at + 3)];
  const more = [by(at - 3, at + 3), by(at - 2, at + 4)];
  const most = (some: readonly Moved[], of: keyof Moved): number => Math.max(...some.map((one) => one[of]));
  const share = scale === raisedScale ? 1 : 2;
  const spacing = Math.log2((points[at + 1]?.hz ?? middleHz) / middleHz);
  return {
    ...top,
    allowance: {
      levelDb: share * (most(fewer, 'levelDb') / 2 + most(more, 'levelDb')),
      octaves: share * (most(fewer, 'octaves') / 10 + most(more, 'octaves')) + spacing / 250,
    },
  };
}

/** How far other nodes move a summit. */
interface Moved {
  readonly levelDb: number;
  readonly octaves: number;
}

/**
 * How far the curve through `nodes` moves a summit, first order: the level is compared at the summit, where
 * the slope is nil; the place moves by −slope/curvature (Newton's method).
 */
function movedBy(nodes: readonly ResponsePoint[], top: Top, middleHz: number, scale: Scale): Moved {
  const fits = scale !== raisedScale || scaleFor(nodes.map(({ level }) => level.value)) === scale;
  const own = fits ? scale : plainScale;
  const curve = curveThrough(nodes, own, middleHz);
  const line = curve.at(top.octave);
  const curvature = curve.curvatureAt(top.octave);
  return {
    // Beyond 0 on the raised scale there is no level.
    levelDb: own === raisedScale && line >= 0 ? 0 : Math.abs(own.toLevel(line) - top.levelDb),
    octaves: curvature < 0 ? Math.abs(curve.slopeAt(top.octave) / curvature) : 0,
  };
}

interface Top {
  /** Octaves from the middle node. */
  readonly octave: number;
  readonly levelDb: number;
  readonly levelTerms: readonly Term[];
  readonly octaveTerms: readonly Term[];
}

/**
 * The highest point between the middle node's neighbours, by golden-section search (Kiefer, 1953). There the
 * slope is nil: the level moves with a node by the node's weight, and the place by −(the slope of that
 * weight)/(the curve's curvature) (implicit function theorem).
 */
function topOf(nodes: readonly ResponsePoint[], middleHz: number, scale: Scale): Top {
  const x = nodes.map(({ hz }) => Math.log2(hz / middleHz));
  const middle = (nodes.length - 1) / 2;
  const curve = curveThrough(nodes, scale, middleHz);
  const octave = highestBetween(curve, x[middle - 1] ?? 0, x[middle + 1] ?? 0);
  const line = curve.at(octave);
  // A polynomial may overshoot to where no level is: then the middle node itself stands.
  const middleLevel = nodes[middle]?.level;
  if (scale === raisedScale && line >= 0 && middleLevel) {
    return { octave: 0, levelDb: middleLevel.value, levelTerms: [[1, middleLevel]], octaveTerms: [] };
  }
  const levelDb = scale.toLevel(line);
  const perLine = 1 / scale.slope(levelDb);
  const curvature = curve.curvatureAt(octave);
  const perWeightSlope = curvature < 0 ? -1 / curvature : 0;
  const weights = curve.weightsAt(octave);
  const weightSlopes = curve.weightSlopesAt(octave);
  const linePerDb = nodes.map(({ level }) => scale.slope(level.value));
  return {
    octave,
    levelDb,
    levelTerms: nodes.map(({ level }, at) => [perLine * (weights[at] ?? 0) * (linePerDb[at] ?? 0), level]),
    octaveTerms: nodes.map(({ level }, at) => [
      perWeightSlope * (weightSlopes[at] ?? 0) * (linePerDb[at] ?? 0),
      level,
    ]),
  };
}

function highestBetween(curve: Polynomial, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = from;
  let high = to;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let lineA = curve.at(a);
  let lineB = curve.at(b);
  for (let search = 0; search < 36; search += 1) {
    if (lineA > lineB) {
      high = b;
      b = a;
      lineB = lineA;
      a = high - golden * (high - low);
      lineA = curve.at(a);
    } else {
      low = a;
      a = b;
      lineA = lineB;
      b = low + golden * (high - low);
      lineB = curve.at(b);
    }
  }
  return (low + high) / 2;
}
