/**
 * Every constant of the lookup, with its reason.
 * No published error rates exist for people reading such screens: unless a source is named the figures are
 * judgement, common practice, no source. What matters is their order of size, and tests hold the outcomes.
 */

/** Characters a code is made of in the model: A to Z, 0 to 9 and the bar. Others count as if among them. */
export const alphabetSize = 37;

/** Only so many characters are aligned: keeps the products of probabilities within a double's range. */
export const longestCompared = 100;

/** Chance of each event per character of the code (per gap for `added`; per code for `leadingZeros`). */
export interface SlipRates {
  /** Scale of the display's look-alike probabilities: 1 as tabulated, 0 for none. */
  readonly lookAlike: number;
  /** Another character, any of the rest alike. */
  readonly other: number;
  readonly dropped: number;
  /** The same character typed twice. */
  readonly doubled: number;
  /** A stray character, any alike. */
  readonly added: number;
  /** Typed after its right neighbour instead of before. */
  readonly swapped: number;
  /** Zeros (or `0X`) at the start differ in number. */
  readonly leadingZeros: number;
}

/** How a rider who has this code before him types it. */
export const misreadRates: SlipRates = {
  lookAlike: 1,
  other: 0.01, // a blurry screen and gloves: about one code of 8 characters in 12
  dropped: 0.005,
  doubled: 0.005,
  added: 0.002, // hardly ever: a stray key that is no neighbour of anything
  swapped: 0.004,
  leadingZeros: 0.02, // people leave them out, and spreadsheets do
};

/** Each zero too many at the start is once more so likely: zeros are rather left out than added. */
export const addedZero = 1 / 8;

/**
 * How an unknown code differs from a known one it is a relative of: another revision, the next number. On
 * average one character of it is different, mostly a digit for a digit (see `relativeChannel`); look-alikes
 * are no likelier than others.
 */
export function relativeRates(length: number): SlipRates {
  const other = 1 / (length + 1);
  return { lookAlike: 0, other, dropped: 0.02, doubled: 0.01, added: 0.02, swapped: 0.005, leadingZeros: 0 };
}

export const prior = {
  /** The code is one of those known, shared equally among them. */
  known: 0.75,
  /** It is unknown and no relative of a known one: see `strangerRatio`. */
  stranger: 0.1,
  /** It is unknown and a relative of a known one: the case in which a wrong answer would look right. */
  relative: 0.15,
};

/** Weight of a profile outside the family asked for, against 1 inside: families are told apart by sight. */
export const otherFamilyWeight = 0.01;

/** Weight of a spelling other than the displayed code: riders read the screen more than invoices. */
export const otherSpellingWeight = 0.5;

/** What typed exactly like a known code is an unknown one only by a misread on top: about one in four. */
export const strangerTypedAsKnown = 0.25;

/** Chance that the typed text is only the beginning of a code. Small, so that complete matches win. */
export const stoppedEarly = 0.03;

/** Each further unread character costs this factor. Mild: codes are looked up from the first key on. */
export const unreadFactor = 0.7;

/** Of unknown codes that are no relatives so many are like no other; the rest are made as their family's are. */
export const strangerLikeNoOther = 0.2;

/** How often a family shows a character, at one position, that its known codes do not have there: as if this
 * many more codes were known, spread over digits and letters. */
export const seenBefore = 4;

/** Chance that an unknown code is longer than a known one; each character more halves it. */
export const strangerLonger = 0.1;

/** `found` needs this posterior. It leaves so little that the best is clear of the second by 65 to 1, and
 * is above what an exact match keeps beside a twin one common look-alike away: then look again. */
export const foundAtLeast = 0.985;

/** Below this the best candidate is not worth asking about, nor a family with so little in all. */
export const worthAsking = 0.2;

/** A candidate within this factor of the best belongs to the question. */
export const closeToBest = 0.005;

/** Candidates below this are not listed, save beginnings, each of which may be one of thousands. */
export const worthListing = 0.001;

/** How many candidates are listed unless told otherwise. */
export const defaultLimit = 5;
