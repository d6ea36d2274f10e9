/** A curve through measured levels over the logarithm of frequency, and what it costs in uncertainty. */
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
 * What a curve is laid through: levels themselves, or a function of them that makes a filter's curve simple.
 *
 * On the flanks of a boost 1/(10^(L/10) − 1) is, for a peaking filter, linear in sinh²(ln(f/f₀)) and so nearly
 * a parabola (from the analogue prototype of the Audio EQ Cookbook, W3C Note 2021); it needs levels clearly
 * above 0 dB. Past a corner the logarithm of 10^(−L/10) − 1 is, for a Butterworth filter of any order, a
 * straight line over that of frequency (standard filter theory); it needs levels clearly below 0 dB.
 */
interface Scale {
  readonly toLine: (levelDb: number) => number;
  readonly toLevel: (line: number) => number;
  /** d(line)/d(level). */
  readonly slope: (levelDb: number) => number;
}

const plainScale: Scale = { toLine: (level) => level, toLevel: (line) => line, slope: () => 1 };

const raisedScale: Scale = {
  toLine: (level) => -1 / (10 ** (level / 10) - 1),
  toLevel: (line) => 10 * Math.log10(1 - 1 / line),
  slope: (level) => ((Math.LN10 / 10) * 10 ** (level / 10)) / (10 ** (level / 10) - 1) ** 2,
};

export const fallenScale: Scale = {
  toLine: (level) => -Math.log2(10 ** (-level / 10) - 1),
  toLevel: (line) => -10 * Math.log10(1 + 2 ** -line),
  slope: (level) => ((Math.LN10 / 10) * 10 ** (-level / 10)) / (10 ** (-level / 10) - 1) / Math.LN2,
};

/** Levels at least this far above 1 kHz can be laid through on the raised scale, dB. */
const leastRaisedDb = 0.2;

/** Levels at least this far below 1 kHz can be laid through on the fallen scale, dB. */
const leastFallenDb = -0.3;

function scaleFor(levelsDb: readonly number[]): Scale {
  return levelsDb.every((level) => level > leastRaisedDb) ? raisedScale : plainScale;
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
  for (let halving = 0; halving < 40; halving += 1) {
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
 * near an end), on the raised scale where they allow it.
 */
export function summit(points: readonly ResponsePoint[], at: number): Summit | undefined {
  const here = points[at];
  const three = points.slice(at - 1, at + 2);
  if (!here || at < 1 || three.length < 3) return undefined;
  if (three.some(({ level }) => level.value > here.level.value)) return undefined;
  const five = at < 2 || points.length < at + 3 ? three : points.slice(at - 2, at + 3);
  const scale = scaleFor(five.map(({ level }) => level.value));
  const top = (nodes: readonly ResponsePoint[], moved = -1): Top =>
    topOf(
      nodes.map(({ hz }) => Math.log2(hz / here.hz)),
      nodes.map(({ level }, index) => level.value + (index === moved ? differenceDb : 0)),
      scale,
    );
  const best = top(five);
  const plain = top(three);
  const bendDb = three.reduce((sum, { level }, index) => sum + (index === 1 ? -2 : 1) * level.value, 0);
  const spacing = Math.log2((three[2]?.hz ?? here.hz) / (three[0]?.hz ?? here.hz)) / 2;
  const moves = five.map((_, index) => top(five, index));
  const [left, share] = allowance(five.length, scale);
  const terms = (of: (one: Top) => number): Term[] =>
    five.map(({ level }, index) => [(of(moves[index] ?? best) - of(best)) / differenceDb, level]);
  return {
    hz: here.hz * 2 ** best.octave,
    level: propagate(
      best.levelDb,
      'dB',
      terms((one) => one.levelDb),
      [
        limits(
          'interpolation',
          share * Math.abs(best.levelDb - plain.levelDb) + (left * Math.abs(bendDb)) / 6,
        ),
      ],
    ),
    octave: propagate(
      best.octave,
      'oct',
      terms((one) => one.octave),
      [limits('interpolation', share * Math.abs(best.octave - plain.octave) + left * spacing)],
    ),
  };
}

/**
 * The allowance for the interpolation of a summit: a part of the spacing (of the bend, for the level) and a
 * share of what the two further neighbours move it by. Tried on filter responses at third octaves.
 */
function allowance(nodes: number, scale: Scale): readonly [left: number, share: number] {
  if (nodes < 5) return [1 / 10, 0];
  return scale === raisedScale ? [1 / 250, 1 / 2] : [1 / 100, 1];
}

/** A small difference to take sensitivities by, dB. */
const differenceDb = 1e-3;

interface Top {
  /** Octaves from the middle node. */
  readonly octave: number;
  readonly levelDb: number;
}

/** The highest point between the middle node's neighbours, by golden-section search (Kiefer, 1953). */
function topOf(octaves: readonly number[], levelsDb: readonly number[], scale: Scale): Top {
  const curve = new Polynomial(octaves, levelsDb.map(scale.toLine));
  const middle = (octaves.length - 1) / 2;
  let low = octaves[middle - 1] ?? 0;
  let high = octaves[middle + 1] ?? 0;
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [lineA, lineB] = [curve.at(a), curve.at(b)];
  for (let search = 0; search < 36; search += 1) {
    if (lineA > lineB) {
      [high, b, lineB] = [b, a, lineA];
      a = high - golden * (high - low);
      lineA = curve.at(a);
    } else {
      [low, a, lineA] = [a, b, lineB];
      b = low + golden * (high - low);
      lineB = curve.at(b);
    }
  }
  const octave = (low + high) / 2;
  const line = curve.at(octave);
  // A polynomial may overshoot to where no level is: then the middle node itself stands.
  return scale === raisedScale && line >= 0
    ? { octave: 0, levelDb: levelsDb[middle] ?? 0 }
    : { octave, levelDb: scale.toLevel(line) };
}
