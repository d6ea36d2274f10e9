/** Fitted filters as they are to be entered, and the curve of just these settings. Plain data: a worker sends them. */
import type { Filter } from '../../../measure/index.ts';
import { togetherDb } from './curve.ts';
import { fitFilters } from './fit.ts';
import type { EqualiserLimits } from './limits.ts';
import type { Wrong } from './wrong.ts';

export interface Settings {
  /** Lowest frequency first, rounded as they are to be entered. */
  readonly filters: readonly Filter[];
  /** Level of all of them together at each frequency, dB. */
  readonly levelsDb: readonly number[];
}

/** The settings that take out what is wrong. */
export function fitSettings(wrong: Wrong, limits: EqualiserLimits): Settings {
  const filters = cutting(fitFilters(wrong, limits), limits)
    .map(rounded)
    .filter((one) => one.kind === 'high-pass' || one.gainDb !== 0)
    .sort((a, b) => a.hz - b.hz);
  return { filters, levelsDb: togetherDb(filters, wrong.grid) };
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
