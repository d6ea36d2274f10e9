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
 * The table is filled column by column, one for each character of the code, so that codes which begin alike
 * can share their first columns (see `scan.ts`).
 */
import { type Channel, channelOf } from './channel.ts';
import type { ConfusionModel } from './confusion.ts';
import { addedZero, alphabetSize, longestCompared, stoppedEarly, unreadFactor } from './constants.ts';
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
const side = longestCompared + 1;

// Scratch, filled anew by each comparison: calls cannot overlap, and ten thousand codes make no garbage.
/** Column `i` of the table begins at `i * side`. */
const table = new Float64Array(side * side);
const parts = new Float64Array(arrivals.length);
const typed = new Uint16Array(side);
const code = new Uint16Array(side);
/** The same as rows and columns of the channel's table: the code's with the case shown; 0 beyond ASCII. */
const typedSymbol = new Uint8Array(side);
const shownSymbol = new Uint8Array(side);
/** First and last cell of each column that are not 0. */
const first = new Int16Array(side);
const last = new Int16Array(side);
/** What matching all characters to come would bring a cell. */
const reach = new Float64Array(side);
/** What so many characters typed beyond those the code has left can still count at most. */
const surplus = new Float64Array(side);
/** What can still come of it where the code has so many characters more left than are typed. */
const shortfall = new Float64Array(side);
let leastCell = 0;
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

/** Lays down the text that codes are to be compared with. */
export function setTyped(text: string): void {
  typedLength = Math.min(text.length, longestCompared);
  for (let j = 0; j < typedLength; j += 1) {
    typed[j] = text.charCodeAt(j);
    typedSymbol[j] = (typed[j] as number) < 128 ? (typed[j] as number) : 0;
  }
  typedZeros = leadingZeros(text);
  if (typedZeros >= typedLength) typedZeros = -1; // a row of zeros is the zeros of no code
  for (let j = 0; j <= typedLength; j += 1) reach[j] = n ** (typedLength - j);
}

/**
 * Says how the codes that follow are misread, how long they are and how many zeros they begin with, and what a
 * cell must still be able to reach. Gives the most that any of them can.
 */
export function setKind(how: Channel, length: number, zeros: number, atLeast: number): number {
  channel = how;
  codeLength = Math.min(length, longestCompared);
  codeZeros = Math.min(zeros, codeLength);
  leastCell = atLeast;
  // Each takes a stray, a doubling or a character seen as two, at one of the places.
  const { added, doubled } = how.rates;
  const expanding = added + doubled + how.digraphs.reduce((sum, { probability }) => sum + probability, 0);
  const each = Math.min(1, (codeLength + 1) * expanding);
  for (let more = 0; more <= typedLength; more += 1) surplus[more] = each ** more;
  // They are dropped, seen as one with others, or left unread.
  const shrinking = how.rates.dropped + how.digraphs.reduce((sum, { probability }) => sum + probability, 0);
  const gone = Math.min(1, (codeLength + 1) * shrinking);
  let stopped = 0;
  shortfall[0] = 1;
  for (let fewer = 1; fewer <= codeLength; fewer += 1) {
    stopped = stopped * gone + (stopChances[fewer] as number);
    shortfall[fewer] = Math.min(1, gone ** fewer + stopped);
  }
  // Zeros too many or too few at the start are a slip of their own.
  const more = typedLength - Math.max(0, typedZeros) - (codeLength - codeZeros);
  const unmatched = Math.min(Math.abs(more), Math.abs(typedLength - codeLength));
  const lost = more > 0 ? (surplus[unmatched] as number) : (shortfall[unmatched] as number);
  return (reach[0] as number) * lost;
}

/** Lays down a code, canonical and as shown, from one of its characters on; those before are there already. */
export function setCode(canonical: string, shown: string, from: number): void {
  for (let i = from; i < codeLength; i += 1) {
    code[i] = canonical.charCodeAt(i);
    const symbol = shown.charCodeAt(i);
    shownSymbol[i] = symbol < 128 ? symbol : 0;
  }
}

/** Chance that the code's character at `i` is read right: what the other events leave. */
function chanceReadRight(i: number): number {
  const shown = code[i] as number;
  const { rates, anySubstituted, digraphs } = channel;
  const isLast = i + 1 >= codeLength;
  let slips = rates.dropped + rates.doubled + (anySubstituted[shownSymbol[i] as number] as number);
  if (!isLast && code[i + 1] !== shown) slips += rates.swapped;
  for (const { codes, probability } of digraphs) {
    if (shown === codes.single || (!isLast && shown === codes.first && code[i + 1] === codes.second)) {
      slips += probability;
    }
  }
  return 1 - slips;
}

/**
 * Fills the column after `i` characters of the code from the two before it, and gives the sum of its cells,
 * each as it could come out were every character to follow read right. Cells that could not even then reach
 * what `setKind` was told stay 0.
 */
export function fillColumn(i: number): number {
  const { rates, substituted, digraphs } = channel;
  const here = i * side;
  const before = here - side;
  const start = i === 0 ? 0 : Math.min(first[i - 1] as number, i > 1 ? (first[i - 2] as number) : side);
  let end = i === 0 ? 0 : Math.max((last[i - 1] as number) + 2, i > 1 ? (last[i - 2] as number) + 2 : 0);
  const jump = i === codeZeros && typedZeros >= 0 && typedZeros !== i ? typedZeros : -1;
  end = Math.min(typedLength, Math.max(end, jump));
  const from = jump >= 0 ? Math.min(start, jump) : start;
  const dropped = (1 - rates.added) * rates.dropped;
  const read = n * (1 - rates.added); // no stray first, one character typed
  const shown = i > 0 ? (code[i - 1] as number) : 0;
  const row = i > 0 ? (shownSymbol[i - 1] as number) * 128 : 0;
  const right = i > 0 ? read * chanceReadRight(i - 1) : 0;
  let sum = 0;
  first[i] = side;
  last[i] = -1;
  for (let j = from; j <= typedLength && (j <= end || last[i] === j - 1); j += 1) {
    let value = j === 0 && i === 0 ? 1 - rates.leadingZeros : 0;
    if (j > from) value += rates.added * (table[here + j - 1] as number);
    if (i > 0) {
      value += dropped * kept(before, i - 1, j);
      if (j > 0) {
        const seen = typed[j - 1] as number;
        const previous = kept(before, i - 1, j - 1);
        if (shown === seen) {
          value += right * previous;
          if (j > 1 && typed[j - 2] === shown) {
            value += read * n * rates.doubled * kept(before, i - 1, j - 2);
          }
        } else {
          value += read * (substituted[row + (typedSymbol[j - 1] as number)] as number) * previous;
          if (j > 1 && i > 1 && shown === typed[j - 2] && seen === code[i - 2]) {
            value += read * n * rates.swapped * kept(before - side, i - 2, j - 2);
          }
          for (const { codes, probability } of digraphs) {
            if (i > 1 && seen === codes.single && shown === codes.second && code[i - 2] === codes.first) {
              value += read * probability * kept(before - side, i - 2, j - 1);
            }
            if (j > 1 && shown === codes.single && seen === codes.second && typed[j - 2] === codes.first) {
              value += read * n * probability * kept(before, i - 1, j - 2);
            }
          }
        }
      }
    }
    if (j === jump) value += rates.leadingZeros * (1 - addedZero) * (n * addedZero) ** j;
    const fewer = codeLength - i - (typedLength - j);
    const lost = fewer >= 0 ? (shortfall[fewer] as number) : (surplus[-fewer] as number);
    const best = value * (reach[j] as number) * lost;
    if (best <= leastCell) value = 0;
    else {
      if (first[i] === side) first[i] = j;
      last[i] = j;
      sum += best;
    }
    table[here + j] = value;
  }
  return sum;
}

/** A cell of a column that is filled from its first to its last. */
function kept(column: number, i: number, j: number): number {
  return j >= (first[i] as number) && j <= (last[i] as number) ? (table[column + j] as number) : 0;
}

/** What can still come past the column after `i` characters, by a swap or digraph that begins before it. */
export function pastColumn(i: number): number {
  if (i === 0 || i >= codeLength) return 0;
  const { rates, digraphs } = channel;
  const column = (i - 1) * side;
  let sum = 0;
  for (let j = first[i - 1] as number; j <= (last[i - 1] as number); j += 1) {
    const value = table[column + j] as number;
    if (j + 2 <= typedLength && typed[j] === code[i] && typed[j + 1] === code[i - 1]) {
      sum += value * n * n * rates.swapped * (reach[j + 2] as number);
    }
    for (const { codes, probability } of digraphs) {
      if (j < typedLength && typed[j] === codes.single && code[i - 1] === codes.first) {
        sum += value * n * probability * (reach[j + 1] as number);
      }
    }
  }
  return sum;
}

/** What the column after `i` characters says of the text being the whole code, or its beginning, up to here. */
export function wholeAt(i: number): number {
  return (1 - channel.rates.added) * kept(i * side, i, typedLength);
}

/**
 * How much likelier a typed text is given a code than as random characters. Both are canonical, `shown` has the
 * case of the screen, and only the first `longestCompared` characters count. `complete` takes the text for the
 * whole code, `beginning` for the start of it, the chances of stopping there included. Nothing is left out. The
 * object returned is used again by the next call.
 */
export function compare(
  typedText: string,
  codeText: string,
  model: ConfusionModel,
  { shown = codeText, how = channelOf(model) }: { readonly shown?: string; readonly how?: Channel } = {},
): { readonly complete: number; readonly beginning: number } {
  setTyped(typedText);
  setKind(how, codeText.length, leadingZeros(codeText), 0);
  setCode(codeText, shown, 0);
  outcome.beginning = 0;
  for (let i = 0; i <= codeLength; i += 1) {
    fillColumn(i);
    if (i < codeLength) outcome.beginning += wholeAt(i) * stopChance(codeLength - i);
  }
  outcome.complete = wholeAt(codeLength);
  return outcome;
}

/** What each way of arriving at (j typed, i of the code) brings, into `parts`. */
function takeApart(j: number, i: number): void {
  const { rates, substituted, digraphs } = channel;
  const read = n * (1 - rates.added);
  parts.fill(0);
  if (i > 0) parts[3] = (1 - rates.added) * rates.dropped * kept((i - 1) * side, i - 1, j);
  if (j > 0) parts[5] = rates.added * kept(i * side, i, j - 1);
  if (i > 0 && j > 0) {
    const shown = code[i - 1] as number;
    const seen = typed[j - 1] as number;
    const before = read * kept((i - 1) * side, i - 1, j - 1);
    if (shown === seen) {
      parts[0] = before * chanceReadRight(i - 1);
      if (j > 1 && typed[j - 2] === shown) {
        parts[4] = read * n * rates.doubled * kept((i - 1) * side, i - 1, j - 2);
      }
    } else {
      const at = (shownSymbol[i - 1] as number) * 128 + (typedSymbol[j - 1] as number);
      const plain = rates.other / (n - 1);
      const chance = substituted[at] as number;
      parts[chance > 2 * plain ? 1 : 2] = before * chance;
      if (j > 1 && i > 1 && shown === typed[j - 2] && seen === code[i - 2]) {
        parts[6] = read * n * rates.swapped * kept((i - 2) * side, i - 2, j - 2);
      }
      for (const { codes, probability } of digraphs) {
        if (i > 1 && seen === codes.single && shown === codes.second && code[i - 2] === codes.first) {
          parts[7] = read * probability * kept((i - 2) * side, i - 2, j - 1);
        }
        if (j > 1 && shown === codes.single && seen === codes.second && typed[j - 2] === codes.first) {
          parts[8] = read * probability * n * kept((i - 1) * side, i - 1, j - 2);
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
      (_, end) => kept(end * side, end, typedLength) * stopChance(codeLength - end),
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
