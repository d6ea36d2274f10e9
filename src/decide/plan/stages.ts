/** In which order to buy, so that every stage plays and nothing is bought twice. */
import type { JudgedProfile } from '../table-given.ts';
import type { Verdict } from '../verdict.ts';
import { judge, keeps } from './judge.ts';
import type { PlanPolicy } from './policy.ts';
import { type PlanQuery, type Purchase, purchases } from './query.ts';
import { termsOfQuery } from './terms-of-query.ts';

export interface Stage {
  readonly buy: Purchase;
  /** The verdict on the profile once it is fitted, with what was there before. */
  readonly verdict: Verdict;
}

export interface StagedPlan {
  readonly stages: readonly Stage[];
  /** Whether the profile can stay through every stage. */
  readonly keepsThroughout: boolean;
}

/**
 * The order of purchases with the fewest stages at which the profile would have to be changed; of those alike, the
 * one that begins with what the rider wants first. Undefined where there is nothing, or one thing, to buy.
 */
export function stagedPlan(
  policy: PlanPolicy,
  query: PlanQuery,
  profile: JudgedProfile,
): StagedPlan | undefined {
  const bought = purchases
    .filter((one) => isBought(query, one))
    .sort((a, b) => Number(b === query.first) - Number(a === query.first));
  if (bought.length < 2) return undefined;
  let best: StagedPlan | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  const verdictWith = verdictsOf(policy, query, profile);
  for (const order of permutations(bought)) {
    const stages = order.map((buy, at) => ({ buy, verdict: verdictWith(order.slice(0, at + 1)) }));
    const changes = stages.filter(({ verdict }) => !keeps(verdict)).length;
    if (changes >= fewest) continue;
    fewest = changes;
    best = { stages, keepsThroughout: changes === 0 };
    if (fewest === 0) break;
  }
  return best;
}

function isBought(query: PlanQuery, one: Purchase): boolean {
  return one === 'amplifier' ? query.amplifier?.place === 'aftermarket' : query[one] !== undefined;
}

/** The verdict once some things are fitted, with what was there before; in whatever order, it is found once. */
function verdictsOf(
  policy: PlanPolicy,
  query: PlanQuery,
  profile: JudgedProfile,
): (fitted: readonly Purchase[]) => Verdict {
  const before: PlanQuery = {
    ...query,
    amplifier: query.amplifier?.place === 'aftermarket' ? query.fitted : query.amplifier,
    front: undefined,
    rear: undefined,
    subwoofer: undefined,
  };
  const known = new Map<string, Verdict>();
  return (fitted) => {
    const key = [...fitted].sort().join();
    const plan = { ...before, ...Object.fromEntries(fitted.map((one) => [one, query[one]])) };
    const verdict = known.get(key) ?? judge(policy, termsOfQuery(plan), profile, undefined).verdict;
    known.set(key, verdict);
    return verdict;
  };
}

/** All orders, those nearest to the given one first. */
function permutations<T>(items: readonly T[]): T[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first, index) =>
    permutations(items.filter((_, at) => at !== index)).map((rest) => [first, ...rest]),
  );
}
