/** A correction by settings that were fitted: what they leave. */
import { type Filter, propagate, type Quantity, quantity } from '../../../measure/index.ts';
import { phrase } from '../../../words/index.ts';
import { type ArithmeticLine, given, lookedUp } from '../line.ts';
import type { Settings } from './settings.ts';
import type { Points, ToCorrect } from './to-correct.ts';
import { levelled } from './wrong.ts';

export interface Correction {
  /** Settings, lowest frequency first, rounded as they are to be entered; the residuals are those of these settings. */
  readonly filters: readonly Filter[];
  /** The volume step its response was read at. */
  readonly step: number;
  /** Level at each frequency, dB, before and after: relative to the mean difference from the target. */
  readonly points: readonly { readonly hz: number; readonly beforeDb: number; readonly afterDb: number }[];
  readonly lines: readonly ArithmeticLine[];
}

/** The correction by settings that were fitted, and what they leave. */
export function corrected(
  { step, points, wrong, sources }: ToCorrect,
  { filters, levelsDb }: Settings,
): Correction {
  const { errorDb: before } = wrong;
  const after = levelled(before.map((level, index) => level + (levelsDb[index] ?? 0)));
  return {
    filters,
    step,
    points: points.map(({ hz }, index) => ({ hz, beforeDb: before[index] ?? 0, afterDb: after[index] ?? 0 })),
    lines: residualLines(points, before, after, levelsDb, sources),
  };
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
