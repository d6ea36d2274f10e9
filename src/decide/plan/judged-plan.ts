/** What a plan comes to on a profile, its arithmetic aside: verdict, reasons, what would change it, in which order to buy. */
import { answerPlan } from '../plan-answer.ts';
import type { PlanAnswer, Verdict } from '../verdict.ts';
import { type ChangeAnswer, type Choices, type NamedProfile, smallestChanges } from './changes.ts';
import { judge, keeps } from './judge.ts';
import type { PlanPolicy } from './policy.ts';
import type { PlanQuery } from './query.ts';
import { type StagedPlan, stagedPlan } from './stages.ts';
import { termsOfQuery } from './terms-of-query.ts';

export interface JudgedPlan {
  readonly answer: PlanAnswer;
  /** Ids of the policy’s rules that may fit, the likeliest first. */
  readonly rules: readonly string[];
  /** Columns of the policy each of which would settle the verdict, once known. */
  readonly settledBy: readonly string[];
  /** Other profiles of the unit that suit the plan: those that need nothing first. */
  readonly suits: readonly { readonly id: string; readonly verdict: Verdict }[];
  /** The smallest changes that make the plan work; empty where it does. */
  readonly changes: readonly ChangeAnswer[];
  readonly staged: StagedPlan | undefined;
}

/** What a plan comes to as it is. */
type AnsweredPlan = Omit<JudgedPlan, 'changes' | 'staged'>;

/** Judges a plan on a profile. */
export function judgePlan(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  choices: Choices,
): JudgedPlan {
  return {
    ...answeredPlan(policy, query, own, suitableProfiles(policy, query, choices)),
    changes: smallestChanges(policy, query, own, choices),
    staged: stagedPlan(policy, query, own.profile),
  };
}

/** @param suits see {@link suitableProfiles} */
export function answeredPlan(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  suits: JudgedPlan['suits'],
): AnsweredPlan {
  const terms = termsOfQuery(query);
  const judgement = judge(policy, terms, own.profile, suits.length);
  return {
    answer: answerPlan(policy, { id: 'yours', terms }, own.profile, suits.length),
    rules: judgement.rules,
    settledBy: judgement.settledBy,
    suits,
  };
}

/** The other profiles of the unit that suit a plan; those that need nothing first, then by their ids. */
export function suitableProfiles(
  policy: PlanPolicy,
  query: PlanQuery,
  { others }: Choices,
): { readonly id: string; readonly verdict: Verdict }[] {
  const terms = termsOfQuery(query);
  return others
    .map(({ id, profile }) => ({ id, verdict: judge(policy, terms, profile, undefined).verdict }))
    .filter(({ verdict }) => keeps(verdict))
    .sort((a, b) => Number(b.verdict === 'keep') - Number(a.verdict === 'keep') || a.id.localeCompare(b.id));
}
