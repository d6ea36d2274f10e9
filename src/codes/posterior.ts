/** Bayes' rule: how probable each known code is, and that it is none of them, given what was typed. */
import { setTyped } from './alignment.ts';
import { channelOf, relativeChannel, unchangedChance } from './channel.ts';
import type { CodeIndex, Spelling, SpellingGroup } from './code-index.ts';
import {
  longestCompared,
  negligible,
  otherFamilyWeight,
  otherSpellingWeight,
  prior,
  strangerTypedAsKnown,
} from './constants.ts';
import { scanGroup } from './scan.ts';
import { strangerRatio } from './strangers.ts';

/** A known code that may be what was typed. */
export interface Hit {
  /** The way of writing it that fits best. */
  readonly spelling: Spelling;
  readonly exact: boolean;
  /** What was typed is likelier the beginning of the code than all of it. */
  readonly isBeginning: boolean;
  probability: number;
}

export interface Posterior {
  /** At most one for each known code; those that cannot matter are left out. In no order. */
  readonly hits: Hit[];
  /** The code is none of those known. With the hits it makes one. */
  readonly noneOfThese: number;
}

/**
 * The posterior over the known codes, an unknown code, and unknown relatives of the known ones. Every entry has
 * the same prior, except that those outside the `family`, if given, have less. Of several spellings of an entry
 * the likeliest counts: simple, and a little generous to codes that have many. Each code is compared by the
 * model of its own display. `thorough` leaves nothing out, which tests hold the quick way against.
 */
export function posterior(
  index: CodeIndex,
  text: string,
  family: string | undefined,
  thorough = false,
): Posterior {
  if (text === '' || index.groups.length === 0) return { hits: [], noneOfThese: 1 };
  const weightOf = (of: string): number => (family === undefined || of === family ? 1 : otherFamilyWeight);
  let allWeights = 0;
  for (const [of, size] of index.familySizes) allWeights += size * weightOf(of);
  const isKnown = index.canonicals.has(text);
  // What is typed exactly like a known code is a stranger's only if misread as well.
  const stranger =
    prior.stranger * strangerRatio(index.familyLengths, text, family) * (isKnown ? strangerTypedAsKnown : 1);
  const length = Math.min(text.length, longestCompared);
  const likeliestFirst = index.groups.toSorted(
    (a, b) =>
      weightOf(b.family) - weightOf(a.family) || distance(a.length, length) - distance(b.length, length),
  );

  setTyped(text);
  const byEntry = new Map<number, Hit>();
  /** What each spelling that was told counts, group by group. */
  const told = new Map<SpellingGroup, Map<number, number>>();
  let best = 0;
  const least = (): number =>
    thorough ? 0 : Math.max(negligible.besideStranger * stranger, negligible.besideBest * best);
  for (const group of likeliestFirst) {
    const perRatio = (prior.known * weightOf(group.family)) / allWeights;
    scanGroup(group, channelOf(group.model), text, least() / perRatio, (at, whole, beginning) => {
      const spelling = group.spellings[at] as Spelling;
      const probability = perRatio * (spelling.displayed ? 1 : otherSpellingWeight) * (whole + beginning);
      best = Math.max(best, probability);
      told.set(group, (told.get(group) ?? new Map<number, number>()).set(at, whole + beginning));
      const known = byEntry.get(spelling.entryIndex);
      if (known && known.probability >= probability) return;
      const exact = spelling.canonical === text;
      byEntry.set(spelling.entryIndex, { spelling, exact, isBeginning: beginning > whole, probability });
    });
  }
  const hits = [...byEntry.values()];

  // What is typed exactly like a known code is no relative of one.
  let relatives = 0;
  for (const [group, itself] of isKnown ? [] : told) {
    const perRatio = (prior.relative * weightOf(group.family)) / allWeights;
    const how = relativeChannel(group.model, group.length);
    const unchanged = unchangedChance(group.length);
    scanGroup(group, how, text, least() / perRatio, (at, whole, beginning) => {
      const weight = group.spellings[at]?.displayed ? 1 : otherSpellingWeight;
      // A relative differs from the code: what comes of the code itself is not counted again.
      const changed = whole + beginning - unchanged * (itself.get(at) ?? 0);
      relatives += perRatio * weight * Math.max(0, changed);
    });
  }
  const none = stranger + relatives;
  const total = none + sumOf(hits);
  if (!(total > 0)) return { hits: [], noneOfThese: 1 };
  for (const hit of hits) hit.probability /= total;
  return { hits, noneOfThese: none / total };
}

/** Codes longer than the text, of which it may be the beginning, come before shorter ones. */
const distance = (length: number, typed: number): number =>
  length >= typed ? length - typed : 2 * (typed - length);

/** The posterior probability of several codes together. */
export function sumOf(hits: readonly Hit[]): number {
  return hits.reduce((total, hit) => total + hit.probability, 0);
}
