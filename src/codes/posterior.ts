/** Bayes' rule: how probable each known code is, and that it is none of them, given what was typed. */
import { BestSpellings, type Hit } from './best-spellings.ts';
import { unchangedChance } from './channel.ts';
import type { CodeIndex, SpellingGroup } from './code-index.ts';
import { otherFamilyWeight, prior, strangerTypedAsKnown } from './constants.ts';
import { strangerRatio } from './strangers.ts';

/** Probabilities that, over every known code and none of these, make one. */
export interface Posterior {
  /** At most one for each known code; those too improbable to be listed are left out. In no order. */
  readonly hits: readonly Hit[];
  /** The code is none of those known. */
  readonly noneOfThese: number;
  /** All known codes together, whether among the hits or not: of the family asked for, and of the others. */
  readonly inFamily: number;
  readonly elsewhere: number;
  /** All of which the text is likelier the beginning. */
  readonly beginnings: number;
}

const nothing: Posterior = { hits: [], noneOfThese: 1, inFamily: 0, elsewhere: 0, beginnings: 0 };

/**
 * The posterior over the known codes, an unknown code, and unknown relatives of the known ones. Every entry has
 * the same prior, except that those outside the `family`, if given, have less. Of several spellings of an entry
 * the likeliest counts: simple, and a little generous to codes that have many. Each code is compared by the
 * model of its own display, and none is left out of the count.
 */
export function posterior(index: CodeIndex, text: string, family: string | undefined): Posterior {
  if (text === '' || index.groups.length === 0) return nothing;
  const weightOf = (of: string): number => (family === undefined || of === family ? 1 : otherFamilyWeight);
  let allWeights = 0;
  for (const [of, size] of index.familySizes) allWeights += size * weightOf(of);
  const isKnown = index.entriesOf.has(text);
  // What is typed exactly like a known code is a stranger's only if misread as well.
  const stranger =
    prior.stranger * strangerRatio(index.familyLengths, text, family) * (isKnown ? strangerTypedAsKnown : 1);
  const share = ({ family: of }: SpellingGroup): number => weightOf(of) / allWeights;
  let relatives = 0;
  for (const group of index.groups) {
    group.misread.compare(text);
    // What is typed exactly like a known code is no relative of one.
    if (!isKnown) relatives += prior.relative * share(group) * relativesOf(group, text);
  }
  const known = new BestSpellings(
    index,
    (group) => prior.known * share(group),
    (group) => family === undefined || group.family === family,
  );
  const none = stranger + relatives;
  const total = none + known.inFamily.sum + known.elsewhere.sum;
  if (!(total > 0)) return nothing;
  return {
    hits: known.hits(text, total),
    noneOfThese: none / total,
    inFamily: known.inFamily.sum / total,
    elsewhere: known.elsewhere.sum / total,
    beginnings: known.beginnings / total,
  };
}

/** How much likelier a text is as an unknown relative of the group's codes, all taken together. */
function relativesOf({ length, weights, misread, relative }: SpellingGroup, text: string): number {
  const unchanged = unchangedChance(length);
  relative.compare(text);
  let sum = 0;
  for (let at = 0; at < weights.length; at += 1) {
    // A relative differs from the code: what comes of the code itself is not counted again.
    const changed = relative.ratio(at) - unchanged * misread.ratio(at);
    if (changed > 0) sum += (weights[at] as number) * changed;
  }
  return sum;
}

/** The posterior probability of several codes together. */
export function sumOf(hits: readonly Hit[]): number {
  return hits.reduce((total, hit) => total + hit.probability, 0);
}
