/** Ranks the known codes by how likely each is the one a rider read and typed. */
import { phrase } from '../words/index.ts';
import { compare, slipsOfLatest } from './alignment.ts';
import type { Hit } from './best-spellings.ts';
import { canonicalCode } from './canonical-code.ts';
import type { CodeIndex } from './code-index.ts';
import { closeToBest, defaultLimit, foundAtLeast, worthAsking, worthListing } from './constants.ts';
import { displayedPosition } from './normalise.ts';
import { slipsInWords } from './note.ts';
import { type Posterior, posterior, sumOf } from './posterior.ts';
import { modelOf } from './screens.ts';

export interface CodeCandidate {
  /** As the screen shows it. */
  readonly code: string;
  readonly family: string;
  readonly profile: string;
  /** Posterior over all known codes and "none of these". */
  readonly probability: number;
  /** How it differs from what was typed, in plain words. */
  readonly note: string;
  /** `as-typed` to the character, the `same-code` written otherwise, or only `near`. */
  readonly likeness: 'as-typed' | 'same-code' | 'near';
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

/** At least so many codes are put in order, however few are to be listed: all that a question may be about. */
const putInOrder = 100;

/**
 * Finds which known codes a typed text may be, the likeliest first. Case, separators and file endings do not
 * matter. Takes any text, an empty one for an unknown code, and never throws.
 */
export function findCode(index: CodeIndex, typed: string, options: FindOptions = {}): CodeSearch {
  return searchOf(posterior(index, canonicalCode(typed), options.family), typed, options);
}

/** What there is to say of a typed text, once the probabilities are known. */
export function searchOf(probabilities: Posterior, typed: string, options: FindOptions = {}): CodeSearch {
  const { family } = options;
  const limit = Math.max(1, Math.floor(options.limit ?? defaultLimit) || defaultLimit);
  const text = canonicalCode(typed);
  const { noneOfThese, beginnings } = probabilities;
  const inFamily = ({ spelling }: Hit): boolean => family === undefined || spelling.entry.family === family;
  const ordered = Math.max(limit, putInOrder);
  const own = likeliestFirst(probabilities.hits.filter(inFamily), ordered);
  const others = probabilities.hits.filter((hit) => !inFamily(hit));
  const hits = [...own, ...likeliestFirst(others, ordered)];
  const [best] = hits;
  const sameCode = hits.filter((hit) => hit.spelling.canonical === best?.spelling.canonical);
  const families = [...new Set(sameCode.filter(inFamily).map((hit) => hit.spelling.entry.family))];
  if (families.length === 1) families.pop();

  const list = (some: readonly Hit[], sum: number): CodeCandidate[] => {
    // Beginnings may be thousands, each improbable: if they are credible together, the best sets the scale.
    const scale = sum < worthAsking ? 1 : (some[0]?.probability ?? 1);
    const listed = some.filter((hit) => hit.probability >= worthListing * scale).slice(0, limit);
    return listed.map((hit) => {
      const { code, family, profile } = hit.spelling.entry;
      const pick = families.length > 0 && sameCode.includes(hit);
      const { likeness, note: own } = noteOn(hit, typed, text);
      const note = pick ? `${own}; ${phrase('several families have it: pick yours')}` : own;
      return { code, family, profile, probability: hit.probability, note, likeness };
    });
  };
  const conclude = (verdict: CodeVerdict): CodeSearch => ({
    verdict,
    candidates: list(hits, 1 - noneOfThese),
    elsewhere: [],
    families,
    noneOfThese,
  });

  if (family !== undefined && probabilities.inFamily < worthAsking) {
    const elsewhere = list(hits.slice(own.length), probabilities.elsewhere);
    return {
      verdict: 'unknown',
      candidates: list(own, probabilities.inFamily),
      elsewhere,
      families: [],
      noneOfThese,
    };
  }
  if (!best) return conclude('unknown');
  const sum = sumOf(sameCode);
  if (best.isBeginning || (!best.exact && beginnings > sum)) {
    return conclude(beginnings < worthAsking ? 'unknown' : 'partial');
  }
  if (sum >= foundAtLeast) return conclude(sameCode.filter(inFamily).length > 1 ? 'look-again' : 'found');
  if (!best.exact && sum < worthAsking) return conclude('unknown');
  const lookAgain = whereToLook(best, hits, text, noneOfThese);
  return { ...conclude('look-again'), ...(lookAgain && { lookAgain }) };
}

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * A code typed exactly before all others, equally probable ones in the order of their characters. Of thousands of
 * beginnings only the first so many are put in order, and whatever is as probable as they are.
 */
function likeliestFirst(hits: readonly Hit[], atLeast: number): Hit[] {
  const ascending = new Float64Array(hits.length);
  hits.forEach(({ probability }, at) => {
    ascending[at] = probability;
  });
  const least = ascending.sort().at(-atLeast) ?? 0;
  const isInOrder = ({ exact, probability }: Hit): boolean => exact || probability >= least;
  const first = hits
    .filter(isInOrder)
    .sort(
      (a, b) =>
        Number(b.exact) - Number(a.exact) ||
        b.probability - a.probability ||
        inOrder(a.spelling.canonical, b.spelling.canonical),
    );
  return first.length === hits.length ? first : [...first, ...hits.filter((hit) => !isInOrder(hit))];
}

function noteOn(hit: Hit, typed: string, text: string): Pick<CodeCandidate, 'note' | 'likeness'> {
  const { entry, written, canonical, shown, displayed } = hit.spelling;
  if (displayed && typed.trim() === entry.code) {
    return { likeness: 'as-typed', note: phrase('exactly as typed') };
  }
  if (hit.exact) return { likeness: 'same-code', note: phrase('same code, written differently') };
  compare(text, canonical, modelOf(entry.display), { shown });
  const slips = slipsOfLatest();
  const isSame = displayed && !hit.isBeginning && slips.every(({ kind }) => kind === 'leading-zeros');
  const beginning = hit.isBeginning ? phrase('begins like this') : '';
  const found = [beginning, slipsInWords(slips, written)].filter(Boolean).join('; ');
  const note = found || phrase('alike as far as compared');
  return {
    likeness: isSame && slips.length > 0 ? 'same-code' : 'near',
    note: displayed ? note : phrase('as written {code}: {note}', { code: written, note }),
  };
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
