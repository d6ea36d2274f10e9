/** The anchor of a value on the page of its profile. */

import type { Characteristic, ProfileOutput } from '../measure/quantity.ts';
import { valuesNamed } from '../measure/value-under.ts';
import { valueAnchor } from './paths.ts';

/** `value-bass-boost` for the headline value; `value-bass-boost-2` and so on for those under other conditions. */
export function valueAnchorOf(output: ProfileOutput, value: Characteristic): string {
  const at = valuesNamed(output, value.name).indexOf(value);
  return at > 0 ? `${valueAnchor(value.name)}-${at + 1}` : valueAnchor(value.name);
}
