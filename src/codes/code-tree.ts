/** Codes that are equally long, as a tree in which those that begin alike share their beginning. */
import { type Digraph, symbolOf } from './confusion.ts';
import { longestCompared } from './constants.ts';

/** A code as it is typed right, and in the letters of the screen, character by character. */
export interface TreeCode {
  readonly canonical: string;
  readonly shown: string;
}

/**
 * A node stands for the first so many characters of a code. Nodes are numbered level by level, so that all that
 * have equally many characters stand side by side, each behind the one it continues; 0 is the root.
 */
export interface CodeTree {
  /** How many characters of the codes are compared. */
  readonly length: number;
  /** Where each level begins; one entry more says where the last one ends. */
  readonly levels: Int32Array;
  /** The node with one character less. */
  readonly parent: Int32Array;
  /** A node's last character: its UTF-16 code, as canonical and as shown (0 beyond ASCII). */
  readonly character: Uint16Array;
  readonly symbol: Uint8Array;
  /** The canonical character after it, 0 at the end of a code; where codes differ in it, that of any of them. */
  readonly next: Uint16Array;
  /** The node that is the whole of each code. */
  readonly leaves: Int32Array;
}

/**
 * Lays codes of one length out as a tree. How likely a character is to be read right depends on the next one
 * too, where the two can be swapped or seen as one: codes part before it, then.
 */
export function codeTree(codes: readonly TreeCode[], digraphs: readonly Digraph[]): CodeTree {
  const length = Math.min(codes[0]?.canonical.length ?? 0, longestCompared);
  const levels = new Int32Array(length + 2);
  const leaves = new Int32Array(codes.length);
  const parent: number[] = [0];
  const character: number[] = [0];
  const symbol: number[] = [0];
  const next: number[] = [0];
  const pairings = 2 ** (1 + digraphs.length);
  levels[1] = 1;
  for (let level = 1; level <= length; level += 1) {
    const made = new Map<number, number>();
    codes.forEach(({ canonical, shown }, at) => {
      const own = canonical.charCodeAt(level - 1);
      const drawn = symbolOf(shown.charCodeAt(level - 1));
      const after = level < length ? canonical.charCodeAt(level) : 0;
      const from = leaves[at] as number;
      const key = ((from * 2 ** 16 + own) * 128 + drawn) * pairings + pairing(own, after, digraphs);
      let node = made.get(key);
      if (node === undefined) {
        node = parent.push(from) - 1;
        character.push(own);
        symbol.push(drawn);
        next.push(after);
        made.set(key, node);
      }
      leaves[at] = node;
    });
    levels[level + 1] = parent.length;
  }
  return {
    length,
    levels,
    parent: Int32Array.from(parent),
    character: Uint16Array.from(character),
    symbol: Uint8Array.from(symbol),
    next: Uint16Array.from(next),
    leaves,
  };
}

/** What a character makes with the next: a number that is the same where it is misread alike. */
function pairing(character: number, next: number, digraphs: readonly Digraph[]): number {
  let bits = character === next ? 1 : 0;
  digraphs.forEach(({ codes }, at) => {
    if (character === codes.first && next === codes.second) bits += 2 ** (1 + at);
  });
  return bits;
}
