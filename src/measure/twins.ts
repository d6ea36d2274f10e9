/** Profiles whose whole measured output is the same, whatever they are called. */
import { normalisedErrorLimit } from './agreement.ts';
import {
  apartBy,
  areUnderLikeConditions,
  type ComparableOutput,
  comparedValues,
  compareValues,
  type OutputComparison,
  ofSameSessions,
} from './compare-outputs.ts';
import { MostTelling } from './most-telling.ts';

/** Fewer values in common than this do not show that two outputs are the same. */
export const leastCompared = 20;

/** Profiles of one family that put out the same, and how far the nearest of the others are. */
export interface OutputGroups {
  /** Every pair in a group agrees. Profiles alone in theirs are left out. */
  readonly groups: readonly { readonly profiles: readonly string[]; readonly apart: number }[];
  /** The two groups (or single profiles) nearest to each other, and the comparison of their nearest pair. */
  readonly nearest:
    | { readonly profiles: readonly [string, string]; readonly apart: number; readonly where: string }
    | undefined;
}

/** Two outputs by their places in the list, the earlier first, and how they compare. */
interface Pair extends OutputComparison {
  readonly a: number;
  readonly b: number;
}

/**
 * Groups outputs so that every pair in a group agrees (complete linkage): the two nearest groups are joined
 * while even their farthest pair agrees. Outputs with too little in common are never joined.
 */
export function groupOutputs(outputs: readonly ComparableOutput[]): OutputGroups {
  const pairs = nearPairs(outputs);
  const clusters = joined(
    outputs.length,
    pairs.filter(({ apart }) => apart <= 1),
  );
  const clusterOf = new Map(clusters.flatMap((members) => members.map((one) => [one, members] as const)));
  const nameOf = (one: number): string => outputs[one]?.profile ?? '';
  let nearest: Pair | undefined;
  for (const pair of pairs) {
    if (clusterOf.get(pair.a) === clusterOf.get(pair.b)) continue;
    if (!nearest || pair.apart < nearest.apart) nearest = pair;
  }
  return {
    groups: clusters
      .filter((members) => members.length > 1)
      .map((members) => ({
        profiles: members.map(nameOf).sort(),
        apart: Math.max(
          ...pairs.filter(({ a, b }) => members.includes(a) && members.includes(b)).map(({ apart }) => apart),
        ),
      })),
    nearest: nearest && {
      profiles: [nameOf(nearest.a), nameOf(nearest.b)],
      apart: nearest.apart,
      where: nearest.where,
    },
  };
}

/**
 * The comparisons of all pairs that may be one group, and of those that may be the nearest of the others: a
 * pair further apart than another one already found can be neither. Pairs with too little in common are left
 * out.
 */
function nearPairs(outputs: readonly ComparableOutput[]): Pair[] {
  const all = outputs.map(comparedValues);
  const mostTelling = new MostTelling(all);
  const pairs: Pair[] = [];
  let nearest = Number.POSITIVE_INFINITY;
  for (const [a, first] of all.entries()) {
    for (let b = a + 1; b < all.length; b += 1) {
      const second = all[b];
      if (!second || !areUnderLikeConditions(first.output, second.output)) continue;
      if (mostTelling.isBeyond(a, b, nearest)) continue;
      const telling = mostTelling.of(a, b);
      if (!telling || telling.compared < leastCompared) continue;
      const [one, other] = [first, second].map(({ values }) => values.get(telling.key));
      // The whole difference is at least that of any one value.
      const together = ofSameSessions(first.output, second.output);
      if (one && other && apartBy(one, other, normalisedErrorLimit(telling.compared), together) > nearest)
        continue;
      const comparison = compareValues(first, second);
      if (!Number.isFinite(comparison.apart)) continue;
      pairs.push({ ...comparison, a, b });
      if (comparison.apart > 1) nearest = Math.min(nearest, comparison.apart);
    }
  }
  return pairs;
}

/** Complete linkage over the pairs that agree: the places 0 to `count` − 1 as clusters. */
function joined(count: number, agreeing: readonly Pair[]): number[][] {
  const apartOf = new Map(agreeing.map(({ a, b, apart }) => [a * count + b, apart]));
  const linkage = (one: readonly number[], other: readonly number[]): number =>
    Math.max(
      ...one.flatMap((a) =>
        other.map((b) => apartOf.get(Math.min(a, b) * count + Math.max(a, b)) ?? Number.POSITIVE_INFINITY),
      ),
    );
  // Most outputs agree with no other: only those that do can be joined.
  const withOthers = new Set(agreeing.flatMap(({ a, b }) => [a, b]));
  let clusters = [...withOthers].sort((a, b) => a - b).map((one) => [one]);
  while (true) {
    let best: { i: number; j: number; apart: number } | undefined;
    for (let i = 0; i < clusters.length; i += 1) {
      for (let j = i + 1; j < clusters.length; j += 1) {
        const apart = linkage(clusters[i] ?? [], clusters[j] ?? []);
        if (apart <= 1 && (!best || apart < best.apart)) best = { i, j, apart };
      }
    }
    if (!best) break;
    const { i, j } = best;
    const both = [...(clusters[i] ?? []), ...(clusters[j] ?? [])];
    clusters = [...clusters.filter((_, index) => index !== i && index !== j), both];
  }
  const alone = Array.from({ length: count }, (_, one) => one).filter((one) => !withOthers.has(one));
  return [...clusters, ...alone.map((one) => [one])];
}
