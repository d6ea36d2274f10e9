/**
 * Aligns a typed text with a code by dynamic programming over the ways the one can come of the other.
 *
 * The model writes text from left to right. Before each character of the code, and at its end, a stray
 * character may come, any number of times; then the code's character is read right, taken for a look-alike
 * or for any other, dropped, doubled, swapped with the next or, with the next, seen as a digraph. The chances
 * of these sum to one; so do those of all texts of the alphabet, but for what `likelihood` names.
 *
 * Everything is counted against text made of uniformly random characters: each typed character multiplies by
 * the size of the alphabet. So 1 means "no better than chance", and long codes keep clear of underflow.
 *
 * This is the plain way, one code at a time, which also tells the slips. `tree-rows.ts` does the same sum for
 * thousands of codes at once.
 */
import { type Channel, chanceReadRight, channelOf } from './channel.ts';
import { type ConfusionModel, symbolOf } from './confusion.ts';
import { addedZero, alphabetSize, longestCompared, stoppedEarly, unreadFactor } from './constants.ts';
import { leadingZeros, zerosBefore } from './normalise.ts';

/** One way in which a typed text departs from a code. */
export interface Slip {
  readonly kind:
    | 'look-alike'
    | 'other'
    | 'dropped'
    | 'doubled'
    | 'added'
    | 'swapped'
    | 'digraph'
    | 'leading-zeros';
  /** Index in the canonical code where it happens; for `added`, of the character it stands before. */
  readonly at: number;
  /** What the code has there, and what was typed. */
  readonly shown: string;
  readonly typed: string;
}

/** Ways to arrive at a cell: name, characters typed, characters of the code. Zeros come from the origin. */
const arrivals = [
  ['match', 1, 1],
  ['look-alike', 1, 1],
  ['other', 1, 1],
  ['dropped', 0, 1],
  ['doubled', 2, 1],
  ['added', 1, 0],
  ['swapped', 2, 2],
  ['digraph', 1, 2],
  ['digraph', 2, 1],
  ['leading-zeros', 0, 0],
] as const;

const n = alphabetSize;
const side = longestCompared + 1;

// Scratch, filled anew by each comparison: calls cannot overlap.
/** Cell of (j typed, i of the code) at `i * side + j`. */
const table = new Float64Array(side * side);
const parts = new Float64Array(arrivals.length);
const typed = new Uint16Array(side);
/** The code; 0 at its end. */
const code = new Uint16Array(side);
/** The same as rows and columns of the channel's table: the code's with the case shown. */
const typedSymbol = new Uint8Array(side);
const shownSymbol = new Uint8Array(side);
let typedLength = 0;
let codeLength = 0;
let typedZeros = 0;
let codeZeros = 0;
let channel: Channel;
const outcome = { complete: 0, beginning: 0 };

/** Chance of stopping with so many characters of the code unread, at least one. */
export const stopChance = (unread: number): number => stopChances[unread] ?? 0;

const stopChances = Float64Array.from({ length: side }, (_, unread) =>
  unread === 0 ? 0 : stoppedEarly * (1 - unreadFactor) * unreadFactor ** (unread - 1),
);

/**
 * How much likelier a typed text is given a code than as random characters. Both are canonical, `shown` has the
 * case of the screen, and only the first `longestCompared` characters count. `complete` takes the text for the
 * whole code, `beginning` for the start of it, the chances of stopping there included. The object returned is
 * used again by the next call.
 */
export function compare(
  typedText: string,
  codeText: string,
  model: ConfusionModel,
  { shown = codeText, how = channelOf(model) }: { readonly shown?: string; readonly how?: Channel } = {},
): { readonly complete: number; readonly beginning: number } {
  channel = how;
  lay(typedText, codeText, shown);
  outcome.beginning = 0;
  for (let i = 0; i <= codeLength; i += 1) {
    for (let j = 0; j <= typedLength; j += 1) {
      takeApart(j, i);
      table[i * side + j] = parts.reduce((sum, part) => sum + part, 0);
    }
    if (i < codeLength) outcome.beginning += wholeAt(i) * stopChance(codeLength - i);
  }
  outcome.complete = wholeAt(codeLength);
  return outcome;
}

function lay(typedText: string, codeText: string, shown: string): void {
  typedLength = Math.min(typedText.length, longestCompared);
  codeLength = Math.min(codeText.length, longestCompared);
  for (let j = 0; j < typedLength; j += 1) {
    typed[j] = typedText.charCodeAt(j);
    typedSymbol[j] = symbolOf(typed[j] as number);
  }
  for (let i = 0; i < codeLength; i += 1) {
    code[i] = codeText.charCodeAt(i);
    shownSymbol[i] = symbolOf(shown.charCodeAt(i));
  }
  code[codeLength] = 0;
  typedZeros = zerosBefore(typedText);
  codeZeros = Math.min(leadingZeros(codeText), codeLength);
}

/** What the column after `i` characters says of the text being the whole code, or its beginning, up to here. */
const wholeAt = (i: number): number => (1 - channel.rates.added) * cell(typedLength, i);

const cell = (j: number, i: number): number => table[i * side + j] as number;

/** What each way of arriving at (j typed, i of the code) brings, into `parts`. */
function takeApart(j: number, i: number): void {
  const { rates, substituted, digraphs } = channel;
  const read = n * (1 - rates.added);
  parts.fill(0);
  if (i === 0 && j === 0) parts[0] = 1 - rates.leadingZeros;
  if (i > 0) parts[3] = (1 - rates.added) * rates.dropped * cell(j, i - 1);
  if (j > 0) parts[5] = rates.added * cell(j - 1, i);
  if (i > 0 && j > 0) {
    const shown = code[i - 1] as number;
    const seen = typed[j - 1] as number;
    const before = read * cell(j - 1, i - 1);
    if (shown === seen) {
      parts[0] = before * chanceReadRight(channel, shown, shownSymbol[i - 1] as number, code[i] as number);
      if (j > 1 && typed[j - 2] === shown) {
        parts[4] = read * n * rates.doubled * cell(j - 2, i - 1);
      }
    } else {
      const at = (shownSymbol[i - 1] as number) * 128 + (typedSymbol[j - 1] as number);
      const plain = rates.other / (n - 1);
      const chance = substituted[at] as number;
      parts[chance > 2 * plain ? 1 : 2] = before * chance;
      if (j > 1 && i > 1 && shown === typed[j - 2] && seen === code[i - 2]) {
        parts[6] = read * n * rates.swapped * cell(j - 2, i - 2);
      }
      for (const { codes, probability } of digraphs) {
        if (i > 1 && seen === codes.single && shown === codes.second && code[i - 2] === codes.first) {
          parts[7] = (parts[7] as number) + read * probability * cell(j - 1, i - 2);
        }
        if (j > 1 && shown === codes.single && seen === codes.second && typed[j - 2] === codes.first) {
          parts[8] = (parts[8] as number) + read * probability * n * cell(j - 2, i - 1);
        }
      }
    }
  }
  if (j === typedZeros && i === codeZeros && j !== i) {
    parts[9] = rates.leadingZeros * (1 - addedZero) * (n * addedZero) ** j;
  }
}

/** The likeliest slips by which the text of the latest `compare` came of its code, in the code's order. */
export function slipsOfLatest(): Slip[] {
  const text = (characters: Uint16Array, from: number, to: number): string =>
    String.fromCharCode(...characters.subarray(from, to)).toWellFormed();
  let i = codeLength;
  if (outcome.beginning > outcome.complete) {
    const stops = Array.from(
      { length: i },
      (_, end) => cell(typedLength, end) * stopChance(codeLength - end),
    );
    i = stops.indexOf(Math.max(...stops));
  }
  let j = typedLength;
  const slips: Slip[] = [];
  while (j + i > 0) {
    takeApart(j, i);
    const [kind, typedCount, codeCount] = arrivals[parts.indexOf(Math.max(...parts))] ?? arrivals[9];
    const zeros = kind === 'leading-zeros';
    const fromTyped = zeros ? 0 : j - typedCount;
    const fromCode = zeros ? 0 : i - codeCount;
    if (kind !== 'match') {
      slips.unshift({ kind, at: fromCode, shown: text(code, fromCode, i), typed: text(typed, fromTyped, j) });
    }
    j = fromTyped;
    i = fromCode;
  }
  return slips;
}
