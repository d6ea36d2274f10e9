/** Everything a plan comes to on a profile: how it is judged, and its arithmetic. */
import { adviceTexts } from './advice.ts';
import type { Choices, NamedProfile } from './changes.ts';
import { usualCorrection } from './equaliser/usual.ts';
import { type JudgedPlan, judgePlan } from './judged-plan.ts';
import type { PlanPolicy } from './policy.ts';
import type { PlanQuery } from './query.ts';
import { type Section, workings } from './workings.ts';

export interface PlanReport extends JudgedPlan {
  readonly sections: readonly Section[];
}

/** Works a plan out on a profile. */
export function planReport(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  choices: Choices,
): PlanReport {
  return {
    ...judgePlan(policy, query, own, choices),
    sections: workings(query, own.profile, adviceTexts(), usualCorrection),
  };
}
