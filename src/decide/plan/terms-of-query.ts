/** What a rider’s plan asks of a profile. */
import type { PlanQuery } from './query.ts';
import type { PlanTerms } from './terms.ts';

/** No limit on the boost where no full-range speaker is planned. */
const noLimitDb = 30;

/** The terms a plan of a rider comes to. */
export function termsOfQuery({ amplifier, front, rear, subwoofer, replacementUnit }: PlanQuery): PlanTerms {
  const fullRange = [front, rear].filter((one) => one !== undefined);
  const all = [...fullRange, ...(subwoofer ? [subwoofer] : [])];
  return {
    feeds: !amplifier
      ? 'speakers'
      : amplifier.place === 'factory'
        ? 'factory-amplifier'
        : 'aftermarket-amplifier',
    input: amplifier && { leastVolts: amplifier.leastVolts, mostVolts: amplifier.mostVolts },
    rearWanted: rear !== undefined,
    mostBassBoostDb: Math.min(noLimitDb, ...fullRange.map(({ mostBassBoostDb }) => mostBassBoostDb)),
    highestLowCornerHz: all.length === 0 ? undefined : Math.min(...all.map(({ lowestHz }) => lowestHz)),
    canCorrect: amplifier?.equaliser ?? false,
    replacementUnit,
  };
}
