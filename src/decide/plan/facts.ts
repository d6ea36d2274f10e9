/** What a decision table is told of a plan and a profile together: levels short or over, each with its uncertainty. */
import type { ReckonedName } from '../../../schemas/index.ts';
import { type Characteristic, greatestBoost, headlineValue, ratioDb } from '../../measure/index.ts';
import type { Known } from '../../tables/within.ts';
import type { JudgedProfile } from '../table-given.ts';
import type { PlanTerms } from './terms.ts';

export type PlanFacts = Readonly<Record<ReckonedName, Known>>;

/**
 * The facts of a plan and a profile. What was not measured may be anything; what the plan does not ask is `null`.
 * Ends of intervals are carried through each formula as they are, for all of them only rise or only fall.
 * @param suitableProfiles how many other profiles of the unit suit the plan; undefined: not known.
 */
export function planFacts(
  terms: PlanTerms,
  { output }: JudgedProfile,
  suitableProfiles: number | undefined,
): PlanFacts {
  const volts = headlineValue(output, 'clean-volts');
  const { input, highestLowCornerHz: limitHz } = terms;
  return {
    feeds: { value: terms.feeds },
    'replacement-unit': { value: terms.replacementUnit },
    'rear-wanted': { value: terms.rearWanted },
    'can-correct': { value: terms.canCorrect },
    'level-short': input ? carried(volts, (v) => ratioDb(input.leastVolts / v)) : notAsked,
    'level-over': input ? carried(volts, (v) => ratioDb(v / input.mostVolts)) : notAsked,
    'boost-over': carried(greatestBoost(output), (db) => db - terms.mostBassBoostDb),
    'low-end-short':
      limitHz === undefined
        ? notAsked
        : carried(headlineValue(output, 'lower-corner'), (hz) => Math.log2(hz / limitHz)),
    'rear-below-front': carried(headlineValue(output, 'rear-to-front'), (db) => -db),
    'suitable-profiles': suitableProfiles === undefined ? { anything: true } : { value: suitableProfiles },
  };
}

const notAsked: Known = { value: null };

function carried(from: Characteristic | undefined, formula: (value: number) => number): Known {
  if (!from) return { anything: true };
  const { value, expandedUncertainty, bound } = from;
  const unboundedLow = from.unit === 'V' || from.unit === 'Hz' ? 0 : Number.NEGATIVE_INFINITY;
  const low = bound === 'at-most' ? unboundedLow : value - expandedUncertainty;
  const high = bound === 'at-least' ? Number.POSITIVE_INFINITY : value + expandedUncertainty;
  const ends = [formula(Math.max(low, unboundedLow)), formula(high)];
  return { value: formula(value), low: Math.min(...ends), high: Math.max(...ends) };
}
