/** Compares a text with all codes of a tree at once: the sum of `alignment.ts`, row by row instead of code by code. */
import { stopChance } from './alignment.ts';
import { type Channel, chanceReadRight } from './channel.ts';
import type { CodeTree } from './code-tree.ts';
import { type Digraph, symbolOf } from './confusion.ts';
import { addedZero, alphabetSize, longestCompared, stoppedEarly } from './constants.ts';
import { zerosBefore } from './normalise.ts';

const n = alphabetSize;

/**
 * The table of the alignment for every code of a tree, one row for each character typed. A row follows from the
 * two before it, so that the next key costs one more: the latest rows are kept, which changes no result.
 */
export class TreeRows {
  readonly #tree: CodeTree;
  readonly #how: Channel;
  readonly #codeZeros: number;
  /** Chance that a node's character is read right. */
  readonly #right: Float64Array;
  /** The cells of the latest row, by node, and of the two before it. */
  #here: Float64Array;
  #before: Float64Array;
  #before2: Float64Array;
  /** The text that the latest row is the end of, and the zeros taken for those before the code. */
  #text = '';
  #zeros = Number.NaN;
  /** For each node, what the text counts for as the beginning of a code, up to the node. */
  readonly #begun: Float64Array;
  /**
   * How much likelier the latest text is than random characters given each code, typed to its end and only its
   * beginning, the chances of either included.
   */
  readonly whole: Float64Array;
  readonly beginning: Float64Array;

  /** For codes that begin with so many zeros and are misread like this. */
  constructor(tree: CodeTree, how: Channel, codeZeros: number) {
    this.#tree = tree;
    this.#how = how;
    this.#codeZeros = Math.min(codeZeros, tree.length);
    const { character, symbol, next, leaves } = tree;
    const nodes = character.length;
    this.#right = Float64Array.from(character, (own, node) =>
      chanceReadRight(how, own, symbol[node] as number, next[node] as number),
    );
    this.#here = new Float64Array(nodes);
    this.#before = new Float64Array(nodes);
    this.#before2 = new Float64Array(nodes);
    this.#begun = new Float64Array(nodes);
    this.whole = new Float64Array(leaves.length);
    this.beginning = new Float64Array(leaves.length);
  }

  /** Compares a canonical text with every code, into `whole` and `beginning`. */
  compare(whole: string): void {
    const text = whole.slice(0, longestCompared);
    const zeros = zerosBefore(text);
    if (zeros !== this.#zeros || !text.startsWith(this.#text)) {
      this.#text = '';
      this.#zeros = zeros;
      this.#fillFirst();
    }
    for (let j = this.#text.length + 1; j <= text.length; j += 1) this.#fillNext(text, j);
    this.#text = text;
    this.#conclude();
  }

  /** The latest text against random characters, given a code. */
  ratio(code: number): number {
    return (this.whole[code] as number) + (this.beginning[code] as number);
  }

  /** The row before any character is typed: everything so far is dropped, whatever it was. */
  #fillFirst(): void {
    const { levels, length } = this.#tree;
    const { rates } = this.#how;
    let value = 1 - rates.leadingZeros;
    this.#here[0] = value;
    for (let level = 1; level <= length; level += 1) {
      value *= (1 - rates.added) * rates.dropped;
      value += this.#zerosAt(0, level);
      this.#here.fill(value, levels[level], levels[level + 1]);
    }
  }

  /** The row after `j` characters of the text. */
  #fillNext(text: string, j: number): void {
    const here = this.#before2;
    this.#before2 = this.#before;
    this.#before = this.#here;
    this.#here = here;
    here[0] = this.#how.rates.added * (this.#before[0] as number);
    this.#addZeros(j, 0);
    const seen = text.charCodeAt(j - 1);
    const seenBefore = j > 1 ? text.charCodeAt(j - 2) : -1;
    for (let level = 1; level <= this.#tree.length; level += 1) {
      this.#fillLevel(level, seen, seenBefore);
      for (const digraph of this.#how.digraphs) this.#addDigraph(level, digraph, seen, seenBefore);
      this.#addZeros(j, level);
    }
  }

  /** Strays, and one character of the code: dropped, read right, taken for another, doubled, or swapped. */
  #fillLevel(level: number, seen: number, seenBefore: number): void {
    const { levels, parent, character, symbol } = this.#tree;
    const { rates, substituted } = this.#how;
    const [here, before, before2, right] = [this.#here, this.#before, this.#before2, this.#right];
    const { added } = rates;
    const dropped = (1 - added) * rates.dropped;
    const read = n * (1 - added); // no stray first, one character typed
    const doubled = seen === seenBefore ? read * n * rates.doubled : 0;
    const swapped = level > 1 ? read * n * rates.swapped : 0;
    const column = symbolOf(seen);
    const end = levels[level + 1] as number;
    for (let node = levels[level] as number; node < end; node += 1) {
      const from = parent[node] as number;
      const shown = character[node] as number;
      let value = added * (before[node] as number) + dropped * (here[from] as number);
      if (shown === seen) {
        value += read * (right[node] as number) * (before[from] as number);
        if (doubled > 0) value += doubled * (before2[from] as number);
      } else {
        value +=
          read * (substituted[(symbol[node] as number) * 128 + column] as number) * (before[from] as number);
        if (shown === seenBefore && seen === character[from]) {
          value += swapped * (before2[parent[from] as number] as number);
        }
      }
      here[node] = value;
    }
  }

  /** Two characters of the code seen as one, and one seen as two. */
  #addDigraph(level: number, { codes, probability }: Digraph, seen: number, seenBefore: number): void {
    const { levels, parent, character } = this.#tree;
    const [here, before, before2] = [this.#here, this.#before, this.#before2];
    const asOne = level > 1 && seen === codes.single;
    const asTwo = seen === codes.second && seenBefore === codes.first;
    if (!asOne && !asTwo) return;
    const chance = n * (1 - this.#how.rates.added) * probability;
    const end = levels[level + 1] as number;
    for (let node = levels[level] as number; node < end; node += 1) {
      const from = parent[node] as number;
      const shown = character[node] as number;
      if (shown === seen) continue;
      if (asOne && shown === codes.second && character[from] === codes.first) {
        here[node] = (here[node] as number) + chance * (before[parent[from] as number] as number);
      }
      if (asTwo && shown === codes.single) {
        here[node] = (here[node] as number) + chance * n * (before2[from] as number);
      }
    }
  }

  /** What comes of zeros before the code that are other than it has; there and nowhere else. */
  #zerosAt(j: number, level: number): number {
    if (j !== this.#zeros || level !== this.#codeZeros || j === level) return 0;
    return this.#how.rates.leadingZeros * (1 - addedZero) * (n * addedZero) ** j;
  }

  #addZeros(j: number, level: number): void {
    const zeros = this.#zerosAt(j, level);
    if (zeros === 0) return;
    const end = this.#tree.levels[level + 1] as number;
    for (let node = this.#tree.levels[level] as number; node < end; node += 1) {
      this.#here[node] = (this.#here[node] as number) + zeros;
    }
  }

  /** Takes the latest row for the end of the text. */
  #conclude(): void {
    const { levels, parent, leaves, length } = this.#tree;
    const [here, begun] = [this.#here, this.#begun];
    const noStray = 1 - this.#how.rates.added;
    begun[0] = noStray * stopChance(length) * (here[0] as number);
    for (let level = 1; level < length; level += 1) {
      const stopped = noStray * stopChance(length - level);
      const end = levels[level + 1] as number;
      for (let node = levels[level] as number; node < end; node += 1) {
        begun[node] = (begun[parent[node] as number] as number) + stopped * (here[node] as number);
      }
    }
    for (let at = 0; at < leaves.length; at += 1) {
      const leaf = leaves[at] as number;
      this.whole[at] = (1 - stoppedEarly) * noStray * (here[leaf] as number);
      this.beginning[at] = begun[parent[leaf] as number] as number;
    }
  }
}
