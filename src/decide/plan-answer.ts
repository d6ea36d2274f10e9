/** Does a profile suit a plan? The policy table gives the verdict; each topic alone says why. */
import { phrase } from '../words/index.ts';
import { type Judgement, judge } from './plan/judge.ts';
import type { PlanPolicy } from './plan/policy.ts';
import { reasonsFor } from './plan/reasons.ts';
import type { PlanTerms } from './plan/terms.ts';
import type { JudgedProfile } from './table-given.ts';
import type { PlanAnswer, Reason, Verdict } from './verdict.ts';

/**
 * The answer to a plan.
 * @param suitableProfiles how many other profiles of the unit suit the plan; undefined: not asked.
 */
export function answerPlan(
  policy: PlanPolicy,
  plan: { readonly id: string; readonly terms: PlanTerms },
  profile: JudgedProfile,
  suitableProfiles?: number,
): PlanAnswer {
  const judgement = judge(policy, plan.terms, profile, suitableProfiles);
  const reasons = reasonsFor(policy, judgement, plan.terms, profile);
  const { verdict, possible } = judgement;
  return { plan: plan.id, verdict, possible, sentence: sentenceOf(judgement, reasons), reasons };
}

function sentenceOf({ verdict, possible, settledBy }: Judgement, reasons: readonly Reason[]): string {
  const deciding = reasons.filter(({ outcome }) =>
    verdict === 'reflash' || verdict === 'replace'
      ? outcome === 'fails'
      : verdict === 'measure-first'
        ? outcome === 'borderline' || outcome === 'unknown'
        : outcome === 'correct' || outcome === 'borderline',
  );
  const opening = openingOf(verdict, deciding.length, possible.length === 1, settledBy.length > 0);
  return [opening, ...deciding.map(({ text }) => text)].join(' ');
}

function openingOf(verdict: Verdict, deciding: number, isCertain: boolean, isSettledByOne: boolean): string {
  switch (verdict) {
    case 'keep':
      return phrase('Keep this profile: nothing needs to change.');
    case 'keep-and-correct':
      if (!isCertain) return phrase('Keep this profile; something may have to be put right.');
      return deciding > 1
        ? phrase('Keep this profile and put a few things right.')
        : phrase('Keep this profile and put one thing right.');
    case 'reflash':
      return phrase('This profile does not suit the plan; another one would be needed.');
    case 'replace':
      return phrase('This profile does not suit the plan, and no other one known for this unit does.');
    case 'measure-first':
      return deciding > 1 && !isSettledByOne
        ? phrase('Not decided yet: more readings are needed.')
        : phrase('Not decided yet: one more reading would settle it.');
  }
}
