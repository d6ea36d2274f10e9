/** The correction an ordinary amplifier with an equaliser can make. */
import type { Refusal } from '../line.ts';
import { type Correctable, type Correction, correction } from './correction.ts';
import type { EqualiserLimits } from './curve.ts';

/** Filters a plain amplifier's equaliser has: common practice, no source. */
export const mostFilters = 4;

/** What an equaliser can usually be set to: common practice, no source. */
const usualEqualiser: EqualiserLimits = {
  mostFilters,
  kinds: ['peaking', 'low-shelf'],
  hz: [20, 20_000],
  gainDb: [-12, 6],
  q: [0.5, 5],
};

/** Settings that bring a profile’s response level. */
export function usualCorrection(output: Correctable): Correction | Refusal {
  return correction(output, usualEqualiser);
}
