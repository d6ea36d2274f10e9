/** A correction by filters that were fitted: how they are to be set, and what they leave. */
import { type Filter, propagate, type Quantity, quantity } from '../../../measure/index.ts';
import { phrase } from '../../../words/index.ts';
import { type ArithmeticLine, given, lookedUp } from '../line.ts';
import { levelled, togetherDb } from './curve.ts';
import type { EqualiserLimits } from './limits.ts';
import type { Points, ToCorrect } from './to-correct.ts';

export interface Correction {
  /** Settings, lowest frequency first, rounded as they are to be entered; the residuals are those of these settings. */
  readonly filters: readonly Filter[];
  /** The volume step its response was read at. */
  readonly step: number;
  /** Level at each frequency, dB, before and after: relative to the mean difference from the target. */
  readonly points: readonly { readonly hz: number; readonly beforeDb: number; readonly afterDb: number }[];
  readonly lines: readonly ArithmeticLine[];
}

/** The correction by filters that were fitted: as they are to be set, and what they leave. */
export function corrected(
  { step, points, wrong, sources }: ToCorrect,
  fitted: readonly Filter[],
  limits: EqualiserLimits,
): Correction {
  const filters = cutting(fitted, limits)
    .map(rounded)
    .filter((one) => one.kind === 'high-pass' || one.gainDb !== 0)
    .sort((a, b) => a.hz - b.hz);
  const { grid, errorDb: before } = wrong;
  const curve = togetherDb(filters, grid);
  const after = levelled(before.map((level, index) => level + (curve[index] ?? 0)));
  return {
    filters,
    step,
    points: points.map(({ hz }, index) => ({ hz, beforeDb: before[index] ?? 0, afterDb: after[index] ?? 0 })),
    lines: residualLines(points, before, after, curve, sources),
  };
}

/**
 * Shelves that cut in the place of those that boost, where the equaliser has them: a high shelf of +G is, but for the
 * overall level, the low shelf of −G at the same frequency and Q. A cut takes no headroom.
 */
function cutting(filters: readonly Filter[], { kinds, gainDb }: EqualiserLimits): Filter[] {
  const swaps = filters.map((one): Filter => {
    const other =
      one.kind === 'low-shelf' ? 'high-shelf' : one.kind === 'high-shelf' ? 'low-shelf' : undefined;
    const isBetter =
      other !== undefined && one.gainDb > 0 && kinds.includes(other) && -one.gainDb >= gainDb[0];
    return isBetter ? { ...one, kind: other, gainDb: -one.gainDb } : one;
  });
  const shelves = swaps.flatMap(({ kind }) => (kind.endsWith('shelf') ? [kind] : []));
  // One of each at most: of two, either both change places or neither.
  return new Set(shelves).size === shelves.length ? swaps : [...filters];
}

/** To four digits of frequency, hundredths of a decibel, thousandths of Q. */
function rounded({ kind, hz, gainDb, q }: Filter): Filter {
  return { kind, hz: Number(hz.toPrecision(4)), gainDb: Number(gainDb.toFixed(2)), q: Number(q.toFixed(3)) };
}

function residualLines(
  points: Points,
  before: readonly number[],
  after: readonly number[],
  curve: readonly number[],
  sources: readonly string[],
): readonly ArithmeticLine[] {
  const readings = [...new Set(points.flatMap((point) => point.readings))];
  const over = [
    { ...given('n', phrase('frequencies'), points.length, '1', sources), readings },
    given('f_1', phrase('lowest of them'), points[0]?.hz ?? 0, 'Hz'),
    given('f_2', phrase('highest of them'), points.at(-1)?.hz ?? 0, 'Hz'),
  ];
  const root = {
    symbol: 'e_rms',
    formula: phrase('the root of the mean of the squares of what is left at the n frequencies'),
    isInWords: true,
    given: over,
  };
  return [
    lookedUp({ ...root, id: 'response-rms', symbol: 'e_0' }, rootMeanSquare(points, before)),
    lookedUp({ ...root, id: 'residual-rms' }, rootMeanSquare(points, after)),
    lookedUp(
      {
        id: 'residual-largest',
        symbol: 'e_max',
        formula: phrase('the largest of what is left at the n frequencies'),
        isInWords: true,
        given: over,
      },
      largest(points, after),
    ),
    lookedUp(
      {
        id: 'correction-headroom',
        symbol: 'H',
        formula: phrase('the highest level of all filters together, or 0'),
        isInWords: true,
        given: over,
      },
      quantity(Math.max(0, ...curve), 'dB', []),
    ),
  ];
}

/** √(Σe²/n); moves with each level by e/(n·rms). */
function rootMeanSquare(points: Points, errors: readonly number[]): Quantity {
  const rms = Math.sqrt(errors.reduce((sum, one) => sum + one * one, 0) / errors.length);
  if (rms === 0) return quantity(0, 'dB', []);
  return propagate(
    rms,
    'dB',
    points.map(({ level }, index) => [(errors[index] ?? 0) / (errors.length * rms), level]),
  );
}

function largest(points: Points, errors: readonly number[]): Quantity {
  const sizes = errors.map(Math.abs);
  const most = Math.max(...sizes);
  const at = sizes.indexOf(most);
  const level = points[at]?.level;
  return propagate(most, 'dB', level ? [[Math.sign(errors[at] ?? 0), level]] : []);
}
