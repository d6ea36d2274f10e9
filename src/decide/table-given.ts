/** What is known of a profile, for the columns of a decision table that speak about profiles. */
import type { Profile, TableEntryInput } from '../../schemas/index.ts';
import { type Characteristic, greatestBoost, type ProfileOutput } from '../measure/index.ts';
import type { Value } from '../tables/table.ts';
import type { Known } from '../tables/within.ts';

/** A profile as decision tables see it. */
export interface JudgedProfile {
  readonly data: Pick<Profile, 'system' | 'origin'>;
  /** The outputs its unit has: FL, FR, RL, RR. */
  readonly channels: readonly string[];
  readonly output: ProfileOutput;
}

/**
 * What is known of each column that speaks about the profile, by column id. A number lies within its expanded
 * uncertainty; what was not measured may be anything, or is `null` where the column may be missing. Columns the
 * rider answers are left out.
 */
export function knownOfProfile(
  inputs: readonly TableEntryInput[],
  profile: JudgedProfile,
): Record<string, Known> {
  const known: Record<string, Known> = {};
  for (const input of inputs) {
    if (input.holds !== 'characteristic' && input.holds !== 'trait') continue;
    const value = numberBehind(input, profile.output);
    known[input.id] = value
      ? withinUncertainty(value)
      : (factBehind(input, profile) ?? (input.mayBeMissing ? { value: null } : { anything: true }));
  }
  return known;
}

/** The measured value behind a column; undefined where it is none, or was not measured. */
export function numberBehind(input: TableEntryInput, output: ProfileOutput): Characteristic | undefined {
  if (input.holds === 'characteristic') {
    return output.characteristics.find(({ name }) => name === input.characteristic);
  }
  return input.holds === 'trait' && input.trait === 'greatest-bass-boost' ? greatestBoost(output) : undefined;
}

function withinUncertainty({ value, expandedUncertainty, bound }: Characteristic): Known {
  const low = bound === 'at-most' ? Number.NEGATIVE_INFINITY : value - expandedUncertainty;
  const high = bound === 'at-least' ? Number.POSITIVE_INFINITY : value + expandedUncertainty;
  return low === high ? { value } : { value, low, high };
}

function factBehind(input: TableEntryInput, { data, channels, output }: JudgedProfile): Known | undefined {
  if (input.holds !== 'trait') return undefined;
  const fact = (value: Value): Known => ({ value });
  switch (input.trait) {
    case 'system':
      return fact(data.system);
    case 'origin':
      return fact(data.origin);
    case 'boost-behaviour':
      return output.boostBehaviour === 'unknown' ? undefined : fact(output.boostBehaviour);
    case 'rear-outputs': {
      if (!channels.some((channel) => channel.startsWith('R'))) return fact('none');
      const rear = output.characteristics.find(({ name }) => name === 'rear-to-front');
      return rear && fact(rear.bound === 'at-most' ? 'silent' : 'playing');
    }
    case 'greatest-bass-boost':
      return undefined;
  }
}
