/** A claim of a statement held against what was measured. */
import type { Claim } from '../../schemas/index.ts';
import {
  type Characteristic,
  normalisedError,
  type ProfileOutput,
  type Unit,
  underMainConditions,
} from '../measure/index.ts';

/** A claim that states a number; the others say whether an output is silent. */
export type ValueClaim = Exclude<Claim, { trait: 'muted' }>;

export interface ClaimComparison {
  /** The field of the claim that holds the number. */
  readonly field: string;
  readonly stated: number;
  readonly unit: Unit;
  /** The tolerance as stated; undefined where the number is meant as rounded. */
  readonly tolerance: number | undefined;
  readonly comparison: 'agrees' | 'differs' | 'not-measured';
  /** What it was held against: the value it fits, else the headline value. */
  readonly computed: Characteristic | undefined;
  /** Whether that is the headline value. */
  readonly isHeadline: boolean;
}

/**
 * Compares a stated number with the computed characteristic of the same name. They agree where |E_n| ≤ 1
 * (ISO 13528, 9.7), the tolerance standing for the statement's uncertainty. A statement names no step, so it
 * agrees where it fits the value at any step, under the main load, supply and signal.
 */
export function compareClaim(claim: ValueClaim, output: ProfileOutput | undefined): ClaimComparison {
  const given = statedIn(claim);
  const allowed = given.tolerance ?? asRounded(given.stated, given.unit);
  const all = output ? underMainConditions(output, claim.trait) : [];
  const fitting = all.find((one) => agrees(given.stated, allowed, one));
  const computed = fitting ?? all[0];
  return {
    ...given,
    comparison: !computed ? 'not-measured' : fitting ? 'agrees' : 'differs',
    computed,
    isHeadline: computed === all[0],
  };
}

/**
 * Whether two claims say the same of the same profile: as close as their tolerances together allow
 * (|E_n| ≤ 1; ISO 13528, 9.7), or both silent, or both playing.
 */
export function claimsAgree(a: Claim, b: Claim): boolean {
  if (a.profile !== b.profile || a.trait !== b.trait) return false;
  if (a.trait === 'muted' || b.trait === 'muted') {
    return a.trait === 'muted' && b.trait === 'muted' && a.channel === b.channel && a.value === b.value;
  }
  const [one, other] = [statedIn(a), statedIn(b)];
  const allowed = Math.hypot(
    one.tolerance ?? asRounded(one.stated, one.unit),
    other.tolerance ?? asRounded(other.stated, other.unit),
  );
  return Math.abs(one.stated - other.stated) <= allowed * (1 + 1e-9);
}

function statedIn(claim: ValueClaim): Pick<ClaimComparison, 'field' | 'stated' | 'unit' | 'tolerance'> {
  switch (claim.trait) {
    case 'clean-volts':
      return { field: 'valueVolts', stated: claim.valueVolts, unit: 'V', tolerance: claim.toleranceVolts };
    case 'highest-clean-step':
      return { field: 'valueStep', stated: claim.valueStep, unit: 'step', tolerance: claim.toleranceSteps };
    case 'lower-corner':
    case 'upper-corner':
      return { field: 'valueHz', stated: claim.valueHz, unit: 'Hz', tolerance: claim.toleranceHz };
    case 'bass-boost':
    case 'rear-to-front':
      return { field: 'valueDb', stated: claim.valueDb, unit: 'dB', tolerance: claim.toleranceDb };
  }
}

/** A number without a tolerance is meant as rounded: half a unit of its last digit. A step is a step. */
function asRounded(value: number, unit: Unit): number {
  if (unit === 'step') return 0;
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

function agrees(stated: number, tolerance: number, computed: Characteristic): boolean {
  if (computed.bound === 'at-most') return stated - tolerance <= computed.value;
  if (computed.bound === 'at-least') return stated + tolerance >= computed.value;
  const error = normalisedError({ value: stated, expandedUncertainty: tolerance }, computed);
  return Number.isNaN(error) || Math.abs(error) <= 1 + 1e-9;
}
