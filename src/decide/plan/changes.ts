/** What if one thing were changed, and what is the smallest change that makes a plan work? */
import type { JudgedProfile } from '../table-given.ts';
import type { Verdict } from '../verdict.ts';
import { judge, keeps } from './judge.ts';
import type { PlanPolicy } from './policy.ts';
import type { Amplifier, PlanQuery, Speaker } from './query.ts';
import type { Catalogue } from './read-query.ts';
import { termsOfQuery } from './terms-of-query.ts';

/** One thing changed. */
export type Change =
  | { readonly change: 'amplifier'; readonly to: Amplifier }
  | { readonly change: 'front' | 'rear'; readonly to: Speaker }
  | { readonly change: 'leave-out-rear' }
  | { readonly change: 'profile'; readonly to: string };

export interface ChangeAnswer {
  /** What is changed: one thing, or two together. */
  readonly changes: readonly Change[];
  readonly verdict: Verdict;
  readonly possible: readonly Verdict[];
}

/** A profile by its id. */
export interface NamedProfile {
  readonly id: string;
  readonly profile: JudgedProfile;
}

/** What a plan is changed within. */
export interface Choices {
  readonly catalogue: Catalogue;
  /** The other profiles of the unit. */
  readonly others: readonly NamedProfile[];
}

/**
 * The answer to every single change, smallest change first: equipment that is still to be bought before what is
 * given up, and both before another profile.
 */
export function singleChanges(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  choices: Choices,
): ChangeAnswer[] {
  return possibleChanges(query, choices).map((change) => answerTo(policy, query, own, choices, [change]));
}

/**
 * The smallest changes that leave a profile in place and the plan working: single ones, or, where none does, pairs.
 * Empty where the plan works as it is, or no pair helps.
 */
export function smallestChanges(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  choices: Choices,
): ChangeAnswer[] {
  const now = judge(policy, termsOfQuery(query), own.profile, undefined);
  if (keeps(now.verdict)) return [];
  const singles = singleChanges(policy, query, own, choices)
    .filter(({ verdict }) => keeps(verdict))
    // Of other profiles, those that need nothing first.
    .sort((a, b) => rank(a) - rank(b));
  if (singles.length > 0) return singles;
  const all = possibleChanges(query, choices);
  const pairs = all.flatMap((one, index) =>
    all.slice(index + 1).flatMap((other) => (one.change === other.change ? [] : [[one, other] as const])),
  );
  return pairs
    .map((pair) => answerTo(policy, query, own, choices, pair))
    .filter(({ verdict }) => keeps(verdict));
}

function rank({ changes, verdict }: ChangeAnswer): number {
  return changes[0]?.change !== 'profile' ? 0 : verdict === 'keep' ? 1 : 2;
}

function possibleChanges({ amplifier, front, rear }: PlanQuery, { catalogue, others }: Choices): Change[] {
  const speakers = catalogue.speakers.filter(({ place }) => place === 'full-range');
  const bought =
    amplifier?.place === 'factory' ? [] : catalogue.amplifiers.filter(({ place }) => place === 'aftermarket');
  return [
    ...bought.flatMap((to): Change[] => (to.id === amplifier?.id ? [] : [{ change: 'amplifier', to }])),
    ...(front
      ? speakers.flatMap((to): Change[] => (to.id === front.id ? [] : [{ change: 'front', to }]))
      : []),
    ...(rear ? speakers.flatMap((to): Change[] => (to.id === rear.id ? [] : [{ change: 'rear', to }])) : []),
    ...(rear ? [{ change: 'leave-out-rear' } as const] : []),
    ...others.map(({ id }): Change => ({ change: 'profile', to: id })),
  ];
}

function answerTo(
  policy: PlanPolicy,
  query: PlanQuery,
  own: NamedProfile,
  { others }: Choices,
  changes: readonly Change[],
): ChangeAnswer {
  let changed = query;
  let { profile } = own;
  for (const one of changes) {
    if (one.change === 'profile') profile = others.find(({ id }) => id === one.to)?.profile ?? profile;
    else if (one.change === 'leave-out-rear') changed = { ...changed, rear: undefined };
    else changed = { ...changed, [one.change]: one.to };
  }
  const { verdict, possible } = judge(policy, termsOfQuery(changed), profile, undefined);
  return { changes, verdict, possible };
}
