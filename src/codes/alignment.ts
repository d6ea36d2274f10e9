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
 */
import type { ConfusionModel } from './confusion.ts';
import {
  addedZero,
  alphabetSize,
  longestCompared,
  type SlipRates,
  stoppedEarly,
  unreadFactor,
} from './constants.ts';
import { leadingZeros } from './normalise.ts';

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

// Scratch, filled anew by each comparison: calls cannot overlap, and ten thousand codes make no garbage.
const side = longestCompared + 1;
const table = new Float64Array(side * side);
const parts = new Float64Array(arrivals.length);
const typed = new Uint16Array(side);
const code = new Uint16Array(side);
const outcome = { complete: 0, beginning: 0 };
let typedLength = 0;
let codeLength = 0;
let typedZeros = 0;
let codeZeros = 0;
let rates: SlipRates;
let model: ConfusionModel;

const cell = (j: number, i: number): number => table[j * (codeLength + 1) + i] as number;

/** Chance of stopping with so many characters of the code unread, at least one. */
export const stopChance = (unread: number): number =>
  stoppedEarly * (1 - unreadFactor) * unreadFactor ** (unread - 1);

/** The table's value at (j typed, i of the code), leaving in `parts` what each way there brings. */
function arrive(j: number, i: number): number {
  const shown = code[i - 1] as number;
  const seen = typed[j - 1] as number;
  const read = n * (1 - rates.added); // no stray first, one character typed
  parts.fill(0);
  if (i > 0) parts[3] = (read / n) * rates.dropped * cell(j, i - 1);
  if (j > 0) parts[5] = rates.added * cell(j - 1, i);
  if (i > 0 && j > 0) {
    const before = read * cell(j - 1, i - 1);
    if (shown === seen) {
      parts[0] = before * chanceReadRight(i - 1);
      if (j > 1 && typed[j - 2] === shown) parts[4] = read * n * rates.doubled * cell(j - 2, i - 1);
    } else {
      if (shown < 128 && seen < 128) {
        parts[1] = before * rates.lookAlike * (model.seen[shown * 128 + seen] as number);
      }
      parts[2] = (before * rates.other) / (n - 1);
      if (j > 1 && i > 1 && shown === typed[j - 2] && seen === code[i - 2]) {
        parts[6] = read * n * rates.swapped * cell(j - 2, i - 2);
      }
      for (const { codes, probability } of model.digraphs) {
        const chance = read * rates.lookAlike * probability;
        if (i > 1 && seen === codes.single && shown === codes.second && code[i - 2] === codes.first) {
          parts[7] = chance * cell(j - 1, i - 2);
        }
        if (j > 1 && shown === codes.single && seen === codes.second && typed[j - 2] === codes.first) {
          parts[8] = chance * n * cell(j - 2, i - 1);
        }
      }
    }
  }
  if (j === typedZeros && i === codeZeros && j !== i) {
    parts[9] = rates.leadingZeros * (1 - addedZero) * (n * addedZero) ** j;
  }
  let sum = 0;
  for (let way = 0; way < parts.length; way += 1) sum += parts[way] as number;
  return sum;
}

/** Chance that the code's character at `i` is read right: what the other events leave. */
function chanceReadRight(i: number): number {
  const shown = code[i] as number;
  const last = i + 1 >= codeLength;
  let slips = rates.other + rates.dropped + rates.doubled;
  if (shown < 128) slips += rates.lookAlike * (model.anySeen[shown] as number);
  if (!last && code[i + 1] !== shown) slips += rates.swapped;
  for (const { codes, probability } of model.digraphs) {
    if (shown === codes.single || (!last && shown === codes.first && code[i + 1] === codes.second)) {
      slips += rates.lookAlike * probability;
    }
  }
  return 1 - slips;
}

/**
 * How much likelier a typed text is given a code than as random characters. Both are canonical, and only
 * their first `longestCompared` characters count. `complete` takes the text for the whole code, `beginning`
 * for the start of it, the chances of stopping there included. What cannot reach `atLeast` is left out. The
 * object returned is used again by the next call.
 */
export function compare(
  typedText: string,
  codeText: string,
  slipRates: SlipRates,
  confusion: ConfusionModel,
  atLeast = 0,
): { readonly complete: number; readonly beginning: number } {
  rates = slipRates;
  model = confusion;
  typedLength = Math.min(typedText.length, longestCompared);
  codeLength = Math.min(codeText.length, longestCompared);
  for (let j = 0; j < typedLength; j += 1) typed[j] = typedText.charCodeAt(j);
  for (let i = 0; i < codeLength; i += 1) code[i] = codeText.charCodeAt(i);
  typedZeros = leadingZeros(typedText);
  if (typedZeros >= typedLength) typedZeros = -1; // a row of zeros is the zeros of no code
  codeZeros = Math.min(leadingZeros(codeText), codeLength);
  const width = codeLength + 1;
  table.fill(0, 0, (typedLength + 1) * width);
  // Of each row only the stretch that matters is filled: a cell counts if, with every character to come
  // matched, it could still reach `atLeast`. Steps come from the two rows before, at most two columns back.
  let reach = n ** typedLength;
  let [from, fromBefore, to, toBefore] = [0, 0, 0, 0];
  for (let j = 0; j <= typedLength; j += 1) {
    let start = Math.min(from, fromBefore);
    let end = Math.max(to, toBefore) + 2;
    if (j === typedZeros) {
      start = Math.min(start, codeZeros);
      end = Math.max(end, codeZeros);
    }
    [fromBefore, toBefore, from, to] = [from, to, codeLength + 1, -1];
    for (let i = start; i <= codeLength && (i <= end || to === i - 1); i += 1) {
      const value = j + i === 0 ? 1 - rates.leadingZeros : arrive(j, i);
      if (value * reach < atLeast) continue;
      table[j * width + i] = value;
      from = Math.min(from, i);
      to = i;
    }
    reach /= n;
  }
  const notAdded = 1 - rates.added;
  outcome.complete = notAdded * cell(typedLength, codeLength);
  outcome.beginning = 0;
  for (let i = from; i <= to && i < codeLength; i += 1) {
    outcome.beginning += notAdded * cell(typedLength, i) * stopChance(codeLength - i);
  }
  return outcome;
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
    arrive(j, i);
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
