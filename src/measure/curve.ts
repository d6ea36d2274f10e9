/** A curve through measured levels over the logarithm of frequency, and what it costs in uncertainty. */
import type { ResponsePoint } from './response.ts';
import { type Component, limits, scaled } from './uncertainty.ts';

/** A place on the curve between two measured frequencies. */
export interface CurvePlace {
  readonly hz: number;
  /** Slope there, dB an octave. */
  readonly slopeDbPerOctave: number;
  /** Budget of the level there, dB, with an allowance for the interpolation. */
  readonly budget: readonly Component[];
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

/**
 * Where the curve crosses `levelDb` between point `at` and the next: by the cubic through the four points
 * about the interval (Lagrange, over log₂ f; fewer at an end), found by bisection. The allowance for the
 * interpolation is a quarter of how far the cubic lies from the straight line there: an estimate of what
 * the next higher order would still move it by, on the safe side for smooth responses.
 */
export function crossing(
  points: readonly ResponsePoint[],
  at: number,
  levelDb: number,
): CurvePlace | undefined {
  const inside = points[at];
  const outside = points[at + 1];
  if (!inside || !outside) return undefined;
  const nodes = points.slice(Math.max(0, at - 1), at + 3);
  const x = nodes.map(({ hz }) => Math.log2(hz));
  const level = (where: number): number =>
    lagrangeWeights(x, where).reduce(
      (sum, weight, index) => sum + weight * (nodes[index]?.level.value ?? 0),
      0,
    );
  const [from, to] = [Math.log2(inside.hz), Math.log2(outside.hz)];
  const sign = Math.sign(inside.level.value - levelDb) || 1;
  let [low, high] = [from, to];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (sign * (level(middle) - levelDb) > 0) low = middle;
    else high = middle;
  }
  const where = (low + high) / 2;
  const delta = (to - from) / 1000;
  const slopeDbPerOctave = (level(where + delta) - level(where - delta)) / (2 * delta);
  const t = (where - from) / (to - from);
  const straight = (1 - t) * inside.level.value + t * outside.level.value;
  return {
    hz: 2 ** where,
    slopeDbPerOctave,
    budget: [
      ...lagrangeWeights(x, where).flatMap((weight, index) =>
        scaled(nodes[index]?.level.budget ?? [], weight),
      ),
      limits('interpolation', Math.abs(straight - levelDb) / 4),
    ],
    readings: [...new Set([...inside.readings, ...outside.readings])],
    sources: [...new Set([...inside.sources, ...outside.sources])],
  };
}

/** Weights of the values at nodes x in the polynomial through them, at `where` (Lagrange). */
export function lagrangeWeights(x: readonly number[], where: number): number[] {
  return x.map((xi, i) =>
    x.reduce((product, xj, j) => (i === j ? product : (product * (where - xj)) / (xi - xj)), 1),
  );
}

export interface Summit {
  readonly hz: number;
  readonly levelDb: number;
  readonly levelBudget: readonly Component[];
  /** Budget of the frequency, octaves. */
  readonly octaveBudget: readonly Component[];
}

/**
 * The summit of the curve about point `at`: of the polynomial through it and two neighbours each side
 * (Lagrange, over log₂ f; one each side near an end). Undefined where the point is no local maximum. The
 * allowances for the interpolation are half of what the two further neighbours move the summit by, and a
 * little for what lies beyond them.
 */
export function summit(points: readonly ResponsePoint[], at: number): Summit | undefined {
  const here = points[at];
  const three = points.slice(at - 1, at + 2);
  if (!here || at < 1 || three.length < 3) return undefined;
  if (three.some(({ level }) => level.value > here.level.value)) return undefined;
  const five = at < 2 || points.length < at + 3 ? three : points.slice(at - 2, at + 3);
  const best = topOf(five, here.hz);
  const plain = topOf(three, here.hz);
  const levels = five.map((node) => node.level.value);
  const step = 1e-4;
  const sensitivity = (index: number): number => {
    const moved = levels.map((level, i) => (i === index ? level + step : level));
    return (topOf(five, here.hz, moved).octave - best.octave) / step;
  };
  const spacing = Math.log2((three[2]?.hz ?? here.hz) / (three[0]?.hz ?? here.hz)) / 2;
  return {
    hz: here.hz * 2 ** best.octave,
    levelDb: best.levelDb,
    levelBudget: [
      ...best.weights.flatMap((weight, index) => scaled(five[index]?.level.budget ?? [], weight)),
      limits('interpolation', Math.abs(best.levelDb - plain.levelDb) / 2 + Math.abs(plain.bendDb) / 200),
    ],
    octaveBudget: [
      ...five.flatMap((node, index) => scaled(node.level.budget, sensitivity(index))),
      limits('interpolation', Math.abs(best.octave - plain.octave) / 2 + spacing / 50),
    ],
  };
}

interface Top {
  /** Octaves from the middle node. */
  readonly octave: number;
  readonly levelDb: number;
  readonly weights: readonly number[];
  /** Second difference of the nodes about the middle, dB. */
  readonly bendDb: number;
}

/** The highest point between the middle node's neighbours, by golden-section search (Kiefer, 1953). */
function topOf(
  nodes: readonly ResponsePoint[],
  middleHz: number,
  levels: readonly number[] = nodes.map((node) => node.level.value),
): Top {
  const x = nodes.map(({ hz }) => Math.log2(hz / middleHz));
  const middle = (nodes.length - 1) / 2;
  const levelAt = (weights: readonly number[]): number =>
    weights.reduce((sum, weight, index) => sum + weight * (levels[index] ?? 0), 0);
  let low = x[middle - 1] ?? 0;
  let high = x[middle + 1] ?? 0;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let search = 0; search < 40; search += 1) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (levelAt(lagrangeWeights(x, a)) > levelAt(lagrangeWeights(x, b))) high = b;
    else low = a;
  }
  const octave = (low + high) / 2;
  const weights = lagrangeWeights(x, octave);
  const bendDb = (levels[middle - 1] ?? 0) - 2 * (levels[middle] ?? 0) + (levels[middle + 1] ?? 0);
  return { octave, levelDb: levelAt(weights), weights, bendDb };
}
