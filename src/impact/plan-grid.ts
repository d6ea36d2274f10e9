/** The plans verdicts are compared on: those riders ask about, and combinations of the classes of equipment. */
import { type Answers, catalogueOf } from '../answers.ts';
import { type PlanTerms, termsOfPlan, termsOfQuery, usualQuery } from '../decide/index.ts';
import type { Cause } from './causes.ts';
import { differsDecisively } from './decisive.ts';
import type { States } from './states.ts';

/** Combinations beyond this many are left out, and that is told. */
export const mostCombinations = 200;

/** A combination of classes: an amplifier or none, front speakers, and the same behind or none. */
export interface Combination {
  readonly amplifier: string | undefined;
  readonly front: string;
  readonly rear: string | undefined;
}

/** A plan in both states. */
export interface ComparedPlan {
  /** The id of a plan of plans/ now, or the combination. */
  readonly plan: string | Combination;
  readonly before: PlanTerms;
  readonly now: PlanTerms;
  /** Changed entries that make what the plan asks differ. */
  readonly causes: readonly Cause[];
}

export interface PlanGrid {
  readonly plans: readonly ComparedPlan[];
  /** How many of them are plans of plans/, and how many combinations. */
  readonly typical: number;
  readonly combinations: number;
  /** Combinations left out. */
  readonly leftOut: number;
}

/**
 * Every plan and every combination that is in both states. Combinations go over the amplifiers there are, and none;
 * over the full-range speakers in front; and over a rear that has the same speakers or none.
 */
export function planGrid(states: States): PlanGrid {
  const typical = [...states.pairs('plans')].flatMap(([plan, pair]): ComparedPlan[] => {
    if (!pair.before || !pair.now) return [];
    const causes: Cause[] = differsDecisively(pair) ? [{ kind: 'plans', id: plan }] : [];
    return [{ plan, before: termsOfPlan(pair.before.data), now: termsOfPlan(pair.now.data), causes }];
  });
  const [before, now] = [combinationsOf(states.before), combinationsOf(states.now)];
  const common = [...now].flatMap(([key, { combination, terms }]): ComparedPlan[] => {
    const was = before.get(key);
    if (!was) return [];
    const classes = [combination.amplifier, combination.front].filter((one) => one !== undefined);
    const causes = classes
      .filter((id) => differsDecisively(states.pair('equipment', id)))
      .map((id): Cause => ({ kind: 'equipment', id }));
    return [{ plan: combination, before: was.terms, now: terms, causes }];
  });
  const kept = common.slice(0, mostCombinations);
  return {
    plans: [...typical, ...kept],
    typical: typical.length,
    combinations: kept.length,
    leftOut: common.length - kept.length,
  };
}

interface CombinedTerms {
  readonly combination: Combination;
  readonly terms: PlanTerms;
}

function combinationsOf(answers: Answers): Map<string, CombinedTerms> {
  const { amplifiers, speakers } = catalogueOf(answers);
  const fronts = speakers.filter(({ place }) => place === 'full-range');
  const all = [undefined, ...amplifiers].flatMap((amplifier) =>
    fronts.flatMap((front) =>
      [undefined, front].map((rear): CombinedTerms => {
        const combination = { amplifier: amplifier?.id, front: front.id, rear: rear?.id };
        return { combination, terms: termsOfQuery({ ...usualQuery, amplifier, front, rear }) };
      }),
    ),
  );
  return new Map(all.map((one) => [JSON.stringify(Object.values(one.combination)), one]));
}
