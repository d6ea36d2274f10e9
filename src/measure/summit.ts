/** The summit of a curve through measured levels, and what it costs in uncertainty. */
import { raisedScale, type Scale, scaleFor } from './curve-scale.ts';
import { Polynomial } from './polynomial.ts';
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
 * near an end), on the raised scale where they allow it.
 */
export function summit(points: readonly ResponsePoint[], at: number): Summit | undefined {
  const here = points[at];
  const three = points.slice(at - 1, at + 2);
  if (!here || at < 1 || three.length < 3) return undefined;
  if (three.some(({ level }) => level.value > here.level.value)) return undefined;
  const five = at < 2 || points.length < at + 3 ? three : points.slice(at - 2, at + 3);
  const scale = scaleFor(five.map(({ level }) => level.value));
  const best = topOf(five, here.hz, scale);
  const plain = topOf(three, here.hz, scale);
  const bendDb = three.reduce((sum, { level }, index) => sum + (index === 1 ? -2 : 1) * level.value, 0);
  const spacing = Math.log2((three[2]?.hz ?? here.hz) / (three[0]?.hz ?? here.hz)) / 2;
  const [left, share] = allowance(five.length, scale);
  const levelAllowance = share * Math.abs(best.levelDb - plain.levelDb) + (left * Math.abs(bendDb)) / 6;
  const octaveAllowance = share * Math.abs(best.octave - plain.octave) + left * spacing;
  return {
    hz: here.hz * 2 ** best.octave,
    level: propagate(best.levelDb, 'dB', best.levelTerms, [limits('interpolation', levelAllowance)]),
    octave: propagate(best.octave, 'oct', best.octaveTerms, [limits('interpolation', octaveAllowance)]),
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
  const curve = new Polynomial(
    x,
    nodes.map(({ level }) => scale.toLine(level.value)),
  );
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
