/** A plan judged in parts: a page answers to a tap between them, on a slow phone too. */
import { type Choices, type NamedProfile, smallestChanges } from '../../decide/plan/changes.ts';
import { answeredPlan, type JudgedPlan, suitableProfiles } from '../../decide/plan/judged-plan.ts';
import type { PlanPolicy } from '../../decide/plan/policy.ts';
import type { PlanQuery } from '../../decide/plan/query.ts';
import { stagedPlan } from '../../decide/plan/stages.ts';
import { pause } from '../pause.ts';

/** What `judgePlan` gives. */
export async function judgedInParts(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  choices: Choices,
): Promise<JudgedPlan> {
  const suits = suitableProfiles(policy, query, choices);
  await pause();
  const answered = answeredPlan(policy, query, own, suits);
  await pause();
  const changes = smallestChanges(policy, query, own, choices);
  await pause();
  return { ...answered, changes, staged: stagedPlan(policy, query, own.profile) };
}
