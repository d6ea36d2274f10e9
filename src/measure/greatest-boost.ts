/** The greatest bass boost of a profile, at whichever step it is. */
import { underMainConditions } from './main-conditions.ts';
import type { Characteristic, ProfileOutput } from './quantity.ts';

/** The greatest bass boost at any step it was measured at, under the main conditions. */
export function greatestBoost(output: ProfileOutput): Characteristic | undefined {
  const [headline, ...others] = underMainConditions(output, 'bass-boost');
  return headline && others.reduce((most, one) => (one.value > most.value ? one : most), headline);
}
