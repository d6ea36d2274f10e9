/** Which profile a unit is on, from a few readings of its outputs. */
import { leastReadings, likelyFrom, sureFrom } from './constants.ts';
import type { IdentifyModel } from './model.ts';
import { type NextReading, nextReading } from './next-reading.ts';
import { posteriorOf } from './posterior.ts';
import { levelReadings, type RiderReading } from './reading.ts';

export const surenesses = ['sure', 'likely', 'not-sure', 'none-of-these'] as const;
export type Sureness = (typeof surenesses)[number];

export interface Candidate {
  readonly profile: string;
  readonly probability: number;
  /** Profiles that cannot be told from it by measuring: same output. */
  readonly twins: readonly string[];
}

export interface Identification {
  /** Every measured profile of the unit, likeliest first. With `noneOfThese` they make one. */
  readonly candidates: readonly Candidate[];
  readonly noneOfThese: number;
  /** How sure it is of the first candidate, its twins included. */
  readonly sureness: Sureness;
  readonly nextReading: NextReading | undefined;
}

/**
 * Ranks the profiles of a unit by posterior probability and names the reading to take next.
 * `accuracyPercent` is the limit of error the next reading will have, the usual one where absent.
 */
export function identify(
  model: IdentifyModel,
  readings: readonly RiderReading[],
  accuracyPercent?: number,
): Identification {
  const levels = levelReadings(readings);
  const posterior = posteriorOf(model, levels);
  const groups = [...posterior.groups].sort((a, b) => b.probability - a.probability);
  const candidates = groups.flatMap(({ hypothesis: group, probability }) =>
    group.profiles.map((profile) => ({
      profile,
      probability: probability / group.profiles.length,
      twins: group.profiles.filter((one) => one !== profile),
    })),
  );
  return {
    candidates,
    noneOfThese: posterior.noneOfThese,
    sureness: surenessOf(groups[0]?.probability ?? 0, posterior.noneOfThese, levels.length),
    nextReading: nextReading(model, posterior, levels, {
      accuracyPercent,
      digitVolts: readings.length > 0 ? Math.min(...readings.map((one) => one.digitVolts)) : undefined,
    }),
  };
}

function surenessOf(best: number, noneOfThese: number, readings: number): Sureness {
  if (readings === 0) return 'not-sure';
  if (noneOfThese > 0.5) return 'none-of-these';
  if (best >= sureFrom && readings >= leastReadings) return 'sure';
  return best >= likelyFrom ? 'likely' : 'not-sure';
}
