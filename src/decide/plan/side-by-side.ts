/** Two profiles side by side: what differs, by how much, and whether that is more than the uncertainty. */
import type { Characteristic, CharacteristicName, ProfileOutput } from '../../measure/index.ts';

export interface Difference {
  readonly name: CharacteristicName;
  readonly one: Characteristic;
  readonly other: Characteristic;
  /** The other less the one, with its expanded uncertainty; undefined where either is a bound. */
  readonly difference: { readonly value: number; readonly expandedUncertainty: number } | undefined;
  /** Whether it is more than its uncertainty: |E_n| > 1 (ISO 13528, 9.7). Undefined with `difference`. */
  readonly differs: boolean | undefined;
}

/**
 * Characteristics both profiles have, in the order of their names. Uncertainties are put together as if the profiles
 * shared no influence, which never makes a difference look surer than it is.
 */
export function sideBySide(one: ProfileOutput, other: ProfileOutput): Difference[] {
  return one.characteristics.flatMap((own) => {
    const its = other.characteristics.find(({ name }) => name === own.name);
    if (!its) return [];
    const isBound = own.bound !== 'exact' || its.bound !== 'exact';
    const value = its.value - own.value;
    const expandedUncertainty = Math.hypot(own.expandedUncertainty, its.expandedUncertainty);
    return [
      {
        name: own.name,
        one: own,
        other: its,
        difference: isBound ? undefined : { value, expandedUncertainty },
        differs: isBound ? undefined : Math.abs(value) > expandedUncertainty,
      },
    ];
  });
}
