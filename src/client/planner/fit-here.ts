/** The equaliser’s settings, fitted where this runs: in the worker, or on the page where there is none. */

import { usualEqualiser } from '../../decide/plan/equaliser/limits.ts';
import { fitSettings, type Settings } from '../../decide/plan/equaliser/settings.ts';
import type { Wrong } from '../../decide/plan/equaliser/wrong.ts';

export function fitHere(wrong: Wrong): Settings {
  return fitSettings(wrong, usualEqualiser);
}
