/** Unknown codes: made as the known codes of their family are, or like no other. */
import { stopChance } from './alignment.ts';
import {
  alphabetSize,
  longestCompared,
  otherFamilyWeight,
  seenBefore,
  stoppedEarly,
  strangerLikeNoOther,
  strangerLonger,
} from './constants.ts';

const kinds = ['0123456789', 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
const symbols = kinds.join('');
const columns = symbols.length + 1;
/** The finest share that is told of a position when it is sent: one in 35. */
const levels = 35;

/** How often each character stands at each position of codes that are equally long. */
export class Positions {
  /** Chance of each symbol, position by position, times the size of the alphabet; the last is any other's. */
  readonly #ratios: Float64Array;
  readonly #counts: Float64Array;
  readonly #length: number;
  readonly #codes: number;

  /** @param counts as `countsOf` gives them, for so many codes */
  constructor(counts: Float64Array, codes: number) {
    this.#length = counts.length / columns;
    this.#counts = counts;
    this.#codes = codes;
    this.#ratios = counts.map((count, cell) => {
      const at = cell - (cell % columns);
      const kind = kindOf(cell % columns);
      let ofKind = 0;
      for (let column = 0; column < columns; column += 1) {
        if (kindOf(column) === kind) ofKind += counts[at + column] ?? 0;
      }
      // An unseen character is likelier of a kind that has been seen here: shared within the kind.
      const ofItsKind = (ofKind + 1) / (codes + 3) / (kinds[kind]?.length ?? 1);
      return (alphabetSize * (count + seenBefore * ofItsKind)) / (codes + seenBefore);
    });
  }

  /** Of codes that are equally long. */
  static of(codes: readonly string[]): Positions {
    const length = Math.min(codes[0]?.length ?? 0, longestCompared);
    const counts = new Float64Array(length * columns);
    for (const code of codes) {
      for (let at = 0; at < length; at += 1) {
        const cell = at * columns + columnOf(code.charCodeAt(at));
        counts[cell] = (counts[cell] ?? 0) + 1;
      }
    }
    return new Positions(counts, codes.length);
  }

  /** In few characters, each count as one of 36 levels; a word for each position. */
  packed(): string {
    return Array.from({ length: this.#length }, (_, at) =>
      Array.from(this.#counts.slice(at * columns, (at + 1) * columns), (count) =>
        Math.ceil((levels * count) / this.#codes).toString(36),
      )
        .join('')
        .replace(/0+$/, ''),
    ).join(' ');
  }

  /** What `packed` gave for so many codes. */
  static unpacked(text: string, codes: number): Positions {
    const rows = text.split(' ').map((row) => {
      const shares = Array.from({ length: columns }, (_, column) =>
        Number.parseInt(row.charAt(column) || '0', 36),
      );
      const sum = shares.reduce((all, share) => all + share, 0);
      return shares.map((share) => (sum > 0 ? (share * codes) / sum : 0));
    });
    return new Positions(Float64Array.from(rows.flat()), codes);
  }

  /** How much likelier a code of these is to begin with this text than random characters are. */
  ratio(text: string): number {
    let ratio = 1;
    for (let at = 0; at < Math.min(text.length, this.#length); at += 1) {
      ratio *= this.#ratios[at * columns + columnOf(text.charCodeAt(at))] as number;
    }
    return ratio;
  }
}

const columnOf = (code: number): number => {
  if (code >= 48 && code <= 57) return code - 48;
  return code >= 65 && code <= 90 ? code - 55 : columns - 1;
};
const kindOf = (column: number): number => (column < 10 ? 0 : column < columns - 1 ? 1 : 2);

/** Displayed codes of one family that are equally long: which characters stand where. */
export interface FamilyLength {
  readonly family: string;
  readonly length: number;
  /** How many codes there are. */
  readonly count: number;
  readonly positions: Positions;
}

/**
 * How much likelier a text is as an unknown code than as random characters. Unknown codes are spread over
 * families and lengths as the known ones are, and over characters as those of their family and length, save a
 * share that is like no other. With a `family` given the others weigh less.
 */
export function strangerRatio(
  familyLengths: readonly FamilyLength[],
  text: string,
  family: string | undefined,
): number {
  const typedLength = Math.min(text.length, longestCompared);
  let [ratio, weights] = [0, 0];
  for (const one of familyLengths) {
    const weight = one.count * (family === undefined || one.family === family ? 1 : otherFamilyWeight);
    weights += weight;
    const chance = weight * lengthChance(typedLength, one.length);
    if (chance === 0) continue;
    ratio += chance * (strangerLikeNoOther + (1 - strangerLikeNoOther) * one.positions.ratio(text));
  }
  return weights === 0 ? 0 : ratio / weights;
}

/** Chance that a text of this length is typed for an unknown code that is long like a known one. */
export function lengthChance(typedLength: number, length: number): number {
  if (typedLength === length) return 1 - stoppedEarly - strangerLonger;
  if (typedLength < length) return stopChance(length - typedLength);
  return strangerLonger * 0.5 ** (typedLength - length);
}
