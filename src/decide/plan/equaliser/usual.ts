/** The correction an ordinary amplifier with an equaliser can make. */
import type { Refusal } from '../line.ts';
import type { Correction } from './corrected.ts';
import { correction } from './correction.ts';
import { usualEqualiser } from './limits.ts';
import type { Correctable } from './to-correct.ts';

/** Settings that bring a profile’s response level. */
export function usualCorrection(output: Correctable): Correction | Refusal {
  return correction(output, usualEqualiser);
}
