/** Ranks the known codes by how likely each is the one a rider read and typed. */
import { compare, slipsOfLatest } from './alignment.ts';
import {
  type CodeEntry,
  type CodeIndex,
  characterCounts,
  fewestSlips,
  type Spelling,
  strangerLengthChance,
} from './codeIndex.ts';
import {
  alphabetSize,
  closeToBest,
  defaultLimit,
  foundAtLeast,
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
  worthAsking,
  worthListing,
} from './constants.ts';
import { canonicalCode, displayedPosition, leadingZeros } from './normalise.ts';
import { slipsInWords } from './note.ts';

export interface CodeCandidate {
  /** As the screen shows it. */
  readonly code: string;
  readonly family: string;
  readonly profile: string;
  /** Posterior over all known codes and "none of these". */
  readonly probability: number;
  /** How it differs from what was typed, in plain words. */
  readonly note: string;
}

/**
 * `found`: the first candidate is the code. `look-again`: likely codes remain that one more look tells
 * apart. `partial`: the beginning of a known code, or of several. `unknown`: none that is known, or none in
 * the family asked for.
 */
export type CodeVerdict = 'found' | 'look-again' | 'partial' | 'unknown';

/** Where to look again. */
export interface LookAgain {
  /** Position in the first candidate's code as displayed (or in the spelling its note names): from 1,
   * separators counted. */
  readonly position: number;
  /** What may stand there, likeliest first. Empty text: nothing, the code ends before it. */
  readonly options: readonly string[];
}

export interface CodeSearch {
  readonly verdict: CodeVerdict;
  /** Best first; those of the family asked for before all others. */
  readonly candidates: readonly CodeCandidate[];
  /** What other families have, when the family asked for has no such code. Empty otherwise. */
  readonly elsewhere: readonly CodeCandidate[];
  /** With `look-again`, unless only the family (or which of two profiles) is in doubt. */
  readonly lookAgain?: LookAgain;
  /** The families to pick from, when the best code stands in several and none was asked for. */
  readonly families: readonly string[];
  /** Posterior that the code is none of those known. */
  readonly noneOfThese: number;
}

export interface FindOptions {
  /** The family the rider says it is, by its id. */
  readonly family?: string;
  /** Most candidates to list, 5 unless given. */
  readonly limit?: number;
}

/** A known code that explains what was typed. */
interface Hit {
  readonly spelling: Spelling;
  readonly exact: boolean;
  readonly isBeginning: boolean;
  /** Posterior probability. */
  probability: number;
}

/**
 * Finds which known codes a typed text may be, the likeliest first. Case, separators and file endings do not
 * matter. Takes any text, an empty one for an unknown code, and never throws.
 */
export function findCode(index: CodeIndex, typed: string, options: FindOptions = {}): CodeSearch {
  const { family } = options;
  const limit = Math.max(1, Math.floor(options.limit ?? defaultLimit) || defaultLimit);
  const text = canonicalCode(typed);
  const { hits, noneOfThese } = posteriors(index, text, family);
  const inFamily = (hit: Hit): boolean => family === undefined || hit.spelling.entry.family === family;
  hits.sort(
    (a, b) =>
      Number(inFamily(b)) - Number(inFamily(a)) ||
      Number(b.exact) - Number(a.exact) ||
      b.probability - a.probability,
  );
  const [best] = hits;
  const sameCode = hits.filter((hit) => hit.spelling.canonical === best?.spelling.canonical);
  const families = [...new Set(sameCode.filter(inFamily).map((hit) => hit.spelling.entry.family))];
  const pickFamily = families.length > 1;
  const list = (some: readonly Hit[]): CodeCandidate[] =>
    some
      .filter((hit) => hit.isBeginning || hit.probability >= worthListing)
      .slice(0, limit)
      .map((hit) => {
        const { code, family, profile } = hit.spelling.entry;
        const note = noteOn(index, hit, typed, text);
        const hint =
          pickFamily && sameCode.includes(hit) ? '; several families have this code: pick yours' : '';
        return { code, family, profile, probability: hit.probability, note: note + hint };
      });
  const conclude = (verdict: CodeVerdict): CodeSearch => ({
    verdict,
    candidates: list(hits),
    elsewhere: [],
    families: pickFamily ? families : [],
    noneOfThese,
  });

  const own = hits.filter(inFamily);
  if (family !== undefined && sum(own) < worthAsking) {
    return { ...conclude('unknown'), candidates: list(own), elsewhere: list(hits.slice(own.length)) };
  }
  if (!best) return conclude('unknown');
  const beginnings = sum(hits.filter((hit) => hit.isBeginning));
  if (best.isBeginning || (!best.exact && beginnings > sum(sameCode))) {
    return conclude(beginnings < worthAsking ? 'unknown' : 'partial');
  }
  if (sum(sameCode) < foundAtLeast) {
    if (!best.exact && sum(sameCode) < worthAsking) return conclude('unknown');
    const lookAgain = whereToLook(best, hits, text, noneOfThese);
    return { ...conclude('look-again'), ...(lookAgain && { lookAgain }) };
  }
  return conclude(sameCode.filter(inFamily).length > 1 ? 'look-again' : 'found');
}

const sum = (hits: readonly Hit[]): number => hits.reduce((total, hit) => total + hit.probability, 0);

/** Bayes' rule over all known codes, a stranger's code and unknown relatives of the known ones. */
function posteriors(
  index: CodeIndex,
  text: string,
  family: string | undefined,
): { hits: Hit[]; noneOfThese: number } {
  const hits: Hit[] = [];
  if (text === '' || index.spellings.length === 0) return { hits, noneOfThese: 1 };
  const { model } = index;
  const weightOf = (entry: CodeEntry): number =>
    family === undefined || entry.family === family ? 1 : otherFamilyWeight;
  const perWeight = 1 / index.entries.reduce((total, entry) => total + weightOf(entry), 0);
  const length = Math.min(text.length, longestCompared);
  let stranger = prior.stranger * strangerLengthChance(index, length);
  const allowed = mostSlips(length);
  const atLeast = Math.max(
    (negligible * stranger) / (prior.known * perWeight),
    alphabetSize ** length * (misreadRates.other / (alphabetSize - 1)) ** (allowed + 1),
  );
  const counts = characterCounts(text.slice(leadingZeros(text), longestCompared), model);

  let relatives = 0;
  let exactKnown = false;
  for (const spelling of index.spellings) {
    const { entry, canonical, displayed } = spelling;
    if (fewestSlips(counts, spelling.counts) > allowed) continue;
    const { complete, beginning } = compare(text, canonical, misreadRates, model, atLeast);
    const whole = (1 - stoppedEarly) * complete;
    if (whole + beginning < atLeast) continue;
    const weight = weightOf(entry) * perWeight * (displayed ? 1 : otherSpellingWeight);
    const probability = prior.known * weight * (whole + beginning);
    const exact = canonical === text;
    exactKnown ||= exact;
    // Of several spellings the likeliest counts: simple, and a little generous to codes that have many.
    const last = hits.at(-1);
    if (last?.spelling.entryIndex !== spelling.entryIndex) {
      hits.push({ spelling, exact, isBeginning: beginning > whole, probability });
    } else if (probability > last.probability) {
      hits[hits.length - 1] = { spelling, exact, isBeginning: beginning > whole, probability };
    }
    const relative = compare(text, canonical, relativeRates(canonical.length), model);
    relatives += prior.relative * weight * ((1 - stoppedEarly) * relative.complete + relative.beginning);
  }
  // What is typed exactly like a known code is no relative of one, and a stranger's only if misread as well.
  if (exactKnown) {
    relatives = 0;
    stranger *= strangerTypedAsKnown;
  }
  const total = sum(hits) + stranger + relatives;
  for (const hit of hits) hit.probability /= total;
  return { hits, noneOfThese: (stranger + relatives) / total };
}

function noteOn(index: CodeIndex, hit: Hit, typed: string, text: string): string {
  const { entry, written, canonical, displayed } = hit.spelling;
  if (displayed && typed.trim() === entry.code) return 'exactly as typed';
  if (hit.exact) return 'same code, written differently';
  compare(text, canonical, misreadRates, index.model);
  const slips = slipsInWords(slipsOfLatest(), written);
  const note = [hit.isBeginning ? 'begins like this' : '', slips].filter(Boolean).join('; ');
  return (displayed ? '' : `as written ${written}: `) + (note || 'alike as far as compared');
}

/** Where the best code first differs from its strongest rival, the text as typed among the rivals. */
function whereToLook(
  best: Hit,
  hits: readonly Hit[],
  text: string,
  noneOfThese: number,
): LookAgain | undefined {
  const { canonical, written } = best.spelling;
  const others = hits.filter((hit) => hit.spelling.canonical !== canonical);
  const asTyped = !best.exact && noneOfThese > (others[0]?.probability ?? 0);
  const rival = asTyped ? text : others[0]?.spelling.canonical;
  if (rival === undefined) return undefined;
  let at = 0;
  while (canonical[at] === rival[at]) at += 1;
  const close = others.filter((hit) => hit.probability >= closeToBest * best.probability);
  const options = [canonical, rival, ...close.map((hit) => hit.spelling.canonical)]
    .filter((code) => code.startsWith(canonical.slice(0, at)))
    .map((code) => Array.from(code.slice(at, at + 2))[0] ?? '');
  return { position: displayedPosition(written, at), options: [...new Set(options)] };
}
