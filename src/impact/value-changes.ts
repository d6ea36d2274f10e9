/** Which measured values of a profile moved, and by how many times their uncertainty. */
import { type CharacteristicName, characteristicNames } from '../../schemas/index.ts';
import { type Bound, type Characteristic, headlineValue, type ProfileOutput } from '../measure/index.ts';
import type { Cause } from './causes.ts';

/** A value as it is compared. */
export interface ComparedValue {
  readonly value: number;
  readonly expandedUncertainty: number;
  readonly bound: Bound;
}

export interface ValueChange {
  readonly name: CharacteristicName;
  /** Undefined where it was not known. */
  readonly before: ComparedValue | undefined;
  readonly now: ComparedValue | undefined;
  /** Now less before, in the unit of the characteristic; undefined where one of the two is not known. */
  readonly difference: number | undefined;
  /** The difference in units of its expanded uncertainty (see {@link normalisedDifference}). */
  readonly inUnitsOfU: number | undefined;
  /** Whether it moved beyond that uncertainty, became known or unknown, or became or ceased to be a bound. */
  readonly hasMoved: boolean;
  readonly causes: readonly Cause[];
}

/**
 * How far a value moved, in units of the expanded uncertainty of the difference: (now − before) ∕ √(U²before + U²now),
 * the E_n of two results (ISO 13528:2022, 9.7; ISO/IEC 17043 uses it for laboratories). Infinite where neither has an
 * uncertainty, as counts have none. The two states often share readings and a voltmeter; that correlation is left out,
 * so the ratio says how far the answer moved for somebody who trusts each as it was given, not how sure it is that the
 * two differ: for that it is too small.
 */
export function normalisedDifference(before: ComparedValue, now: ComparedValue): number {
  const difference = now.value - before.value;
  return difference === 0 ? 0 : difference / Math.hypot(before.expandedUncertainty, now.expandedUncertainty);
}

/** Every headline value that differs, those that moved most for their uncertainty first. */
export function valueChanges(
  before: ProfileOutput,
  now: ProfileOutput,
  causes: readonly Cause[],
): ValueChange[] {
  return characteristicNames
    .flatMap((name): ValueChange[] => {
      const [was, is] = [before, now].map((output) => compared(headlineValue(output, name)));
      if (!was && !is) return [];
      if (!was || !is) {
        const unknown = { difference: undefined, inUnitsOfU: undefined };
        return [{ name, before: was, now: is, ...unknown, hasMoved: true, causes }];
      }
      const isSame =
        was.value === is.value &&
        was.expandedUncertainty === is.expandedUncertainty &&
        was.bound === is.bound;
      if (isSame) return [];
      const inUnitsOfU = normalisedDifference(was, is);
      const hasMoved = Math.abs(inUnitsOfU) > 1 || was.bound !== is.bound;
      const difference = is.value - was.value;
      return [{ name, before: was, now: is, difference, inUnitsOfU, hasMoved, causes }];
    })
    .sort((a, b) => size(b) - size(a));
}

/** What became known or unknown goes before what moved. */
function size({ inUnitsOfU }: ValueChange): number {
  return inUnitsOfU === undefined ? Number.MAX_VALUE : Math.min(Math.abs(inUnitsOfU), Number.MAX_VALUE);
}

function compared(one: Characteristic | undefined): ComparedValue | undefined {
  if (!one) return undefined;
  const { value, expandedUncertainty, bound } = one;
  return { value, expandedUncertainty, bound };
}
