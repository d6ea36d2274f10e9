/** Bayes' rule: how probable each known code is, and that it is none of them, given what was typed. */
import { compare } from './alignment.ts';
import {
  type CodeEntry,
  type CodeIndex,
  characterCounts,
  fewestSlips,
  type Spelling,
  strangerLengthChance,
} from './code-index.ts';
import {
  alphabetSize,
  longestCompared,
  misreadRates,
  mostSlips,
  negligible,
  otherFamilyWeight,
  otherSpellingWeight,
  prior,
  relativeRates,
  stoppedEarly,
  strangerTypedAsKnown,
} from './constants.ts';
import { leadingZeros } from './normalise.ts';

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
  /** At most one for each known code; those that cannot matter are left out. */
  readonly hits: Hit[];
  /** The code is none of those known. With the hits it makes one. */
  readonly noneOfThese: number;
}

/**
 * The posterior over the known codes, an unknown code like no other, and unknown relatives of the known ones.
 * Every entry has the same prior, except that those outside the `family`, if given, have less. Of several
 * spellings of an entry the likeliest counts: simple, and a little generous to codes that have many.
 */
export function posterior(index: CodeIndex, text: string, family: string | undefined): Posterior {
  const hits: Hit[] = [];
  if (text === '' || index.spellings.length === 0) return { hits, noneOfThese: 1 };
  const { model, entries, spellings } = index;
  const familyWeight = (entry: CodeEntry): number =>
    family === undefined || entry.family === family ? 1 : otherFamilyWeight;
  const allWeights = entries.reduce((total, entry) => total + familyWeight(entry), 0);

  const length = Math.min(text.length, longestCompared);
  const counts = characterCounts(text.slice(leadingZeros(text), longestCompared), model);
  const slips = mostSlips(length);
  const perSlip = misreadRates.other / (alphabetSize - 1);
  let stranger = prior.stranger * strangerLengthChance(index, length);
  let relatives = 0;
  const atLeast = Math.max(
    (negligible * stranger * allWeights) / prior.known,
    alphabetSize ** length * perSlip ** (slips + 1),
  );

  for (const spelling of spellings) {
    if (fewestSlips(counts, spelling.counts) > slips) continue;
    const { entry, canonical } = spelling;
    const { complete, beginning } = compare(text, canonical, misreadRates, model, atLeast);
    const whole = (1 - stoppedEarly) * complete;
    if (whole + beginning < atLeast) continue;
    const weight = (familyWeight(entry) * (spelling.displayed ? 1 : otherSpellingWeight)) / allWeights;
    const probability = prior.known * weight * (whole + beginning);
    const last = hits.at(-1);
    const sameEntry = last?.spelling.entryIndex === spelling.entryIndex;
    if (!sameEntry || probability > last.probability) {
      if (sameEntry) hits.pop();
      hits.push({ spelling, exact: canonical === text, isBeginning: beginning > whole, probability });
    }
    const relative = compare(text, canonical, relativeRates(canonical.length), model);
    relatives += prior.relative * weight * ((1 - stoppedEarly) * relative.complete + relative.beginning);
  }

  // What is typed exactly like a known code is no relative of one, and a stranger's only if misread as well.
  if (hits.some((hit) => hit.exact)) {
    relatives = 0;
    stranger *= strangerTypedAsKnown;
  }
  const none = stranger + relatives;
  const total = none + sumOf(hits);
  for (const hit of hits) hit.probability /= total;
  return { hits, noneOfThese: none / total };
}

/** The posterior probability of several codes together. */
export function sumOf(hits: readonly Hit[]): number {
  return hits.reduce((total, hit) => total + hit.probability, 0);
}
