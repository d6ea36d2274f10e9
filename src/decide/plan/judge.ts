/** A plan’s verdict: what the policy table answers to the facts, and where one answer is not certain, what settles it. */
import type { TableEntryInput } from '../../../schemas/index.ts';
import type { Decided } from '../../tables/hit-policy.ts';
import { evaluateCut, type Known, type Within } from '../../tables/within.ts';
import { type JudgedProfile, knownOfProfile } from '../table-given.ts';
import { type Verdict, verdicts } from '../verdict.ts';
import { type PlanFacts, planFacts } from './facts.ts';
import type { PlanPolicy } from './policy.ts';
import type { PlanTerms } from './terms.ts';

export interface Judgement {
  readonly verdict: Verdict;
  /** Verdicts that are possible within uncertainty, the likeliest first. */
  readonly possible: readonly Verdict[];
  /** Ids of the rules of the policy that may fit, the likeliest first. */
  readonly rules: readonly string[];
  /** Ids of the columns each of which would settle the verdict, once known. */
  readonly settledBy: readonly string[];
  /** What the policy was told. */
  readonly known: Readonly<Record<string, Known>>;
}

/**
 * Judges a profile against a plan. Where several verdicts are possible, and not all leave the profile in place, it has
 * to be measured first; where all do, something may have to be corrected. A reflash where no other profile of the unit
 * suits comes to “replace”.
 */
export function judge(
  policy: PlanPolicy,
  terms: PlanTerms,
  profile: JudgedProfile,
  suitableProfiles: number | undefined,
): Judgement {
  const facts = planFacts(terms, profile, suitableProfiles);
  const known = knownByPolicy(policy.inputs, facts, profile);
  return judgementOf(evaluateCut(policy.cut, known), known, suitableProfiles);
}

/** What each column of the policy is known to be. */
export function knownByPolicy(
  inputs: readonly TableEntryInput[],
  facts: PlanFacts,
  profile: JudgedProfile,
): Record<string, Known> {
  const known = knownOfProfile(inputs, profile);
  for (const input of inputs) {
    if (input.holds === 'reckoned') known[input.id] = facts[input.reckoned];
  }
  return known;
}

function judgementOf(
  { possible, settledBy }: Within,
  known: Readonly<Record<string, Known>>,
  suitableProfiles: number | undefined,
): Judgement {
  return {
    ...verdictWithin(possible, suitableProfiles),
    rules: [...new Set(possible.flatMap(({ rules }) => rules))],
    settledBy,
    known,
  };
}

/** The verdict that all the answers a policy may give come to, and those that are possible. */
export function verdictWithin(
  possible: readonly Decided[],
  suitableProfiles: number | undefined,
): Pick<Judgement, 'verdict' | 'possible'> {
  const given = possible.map(({ answers }) => asVerdict(answers[0]?.verdict, suitableProfiles));
  const distinct = [...new Set(given)];
  return { verdict: verdictOf(distinct), possible: distinct };
}

function verdictOf(possible: readonly Verdict[]): Verdict {
  const [first] = possible;
  if (possible.length === 1 && first) return first;
  return possible.length > 1 && possible.every(keeps) ? 'keep-and-correct' : 'measure-first';
}

/** Whether a verdict leaves the profile in place. */
export function keeps(verdict: Verdict): boolean {
  return verdict === 'keep' || verdict === 'keep-and-correct';
}

/** No answer of the table is no verdict: that has to be found out first. */
function asVerdict(answer: unknown, suitableProfiles: number | undefined): Verdict {
  const verdict = verdicts.find((one) => one === answer) ?? 'measure-first';
  return verdict === 'reflash' && suitableProfiles === 0 ? 'replace' : verdict;
}
