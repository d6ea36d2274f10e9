/** Seven strokes: what looks alike follows from the strokes that differ. */
import { confusionModel, type LookAlike } from '../confusion.ts';

/**
 * The strokes of each character, named as usual: a top, b and c right, d bottom, e and f left, g middle; more
 * than one way of drawing it where displays differ. Digits as Unicode's segmented digits (U+1FBF0 to U+1FBF9)
 * show them; tails of 6, 7 and 9 and the letters from memory of the common glyphs. A letter that cannot be
 * drawn with seven strokes (K, M, V, W, X) has none.
 */
const strokes: Readonly<Record<string, string>> = {
  '0': 'abcdef',
  '1': 'bc',
  '2': 'abdeg',
  '3': 'abcdg',
  '4': 'bcfg',
  '5': 'acdfg',
  '6': 'acdefg cdefg',
  '7': 'abc abcf',
  '8': 'abcdefg',
  '9': 'abcdfg abcfg',
  A: 'abcefg',
  B: 'abcdefg',
  C: 'adef',
  D: 'abcdef',
  E: 'adefg',
  F: 'aefg',
  G: 'acdef acdefg',
  H: 'bcefg',
  I: 'bc',
  J: 'bcde bcd',
  L: 'def',
  N: 'abcef',
  O: 'abcdef',
  P: 'abefg',
  Q: 'abcfg',
  S: 'acdfg',
  U: 'bcdef',
  Z: 'abdeg',
  b: 'cdefg',
  c: 'deg',
  d: 'bcdeg',
  g: 'abcdfg',
  h: 'cefg',
  i: 'c',
  l: 'bc',
  n: 'ceg',
  o: 'cdeg',
  q: 'abcfg',
  r: 'eg',
  t: 'defg',
  u: 'cde',
  y: 'bcdfg',
  '|': 'bc',
};

/**
 * Chance of a character that differs by so many strokes. None: the very same strokes, read by what one expects;
 * these share it. One or two: a stroke that stays dark or glows along. Judgement, no source; the order is the
 * strokes'. More strokes are no likelier than any other character.
 */
const same = 0.2;
const byStrokes = [same, 0.012, 0.001];

/** By how many strokes two characters differ at least, over the ways they are drawn. */
export function strokesApart(one: string, other: string): number {
  let fewest = Number.POSITIVE_INFINITY;
  for (const a of strokes[one]?.split(' ') ?? []) {
    for (const b of strokes[other]?.split(' ') ?? []) {
      const differ = [...'abcdefg'].filter((stroke) => a.includes(stroke) !== b.includes(stroke)).length;
      fewest = Math.min(fewest, differ);
    }
  }
  return fewest;
}

const drawn = Object.keys(strokes);

function lookAlikesOf(shown: string): LookAlike[] {
  const others = drawn.filter((other) => other.toUpperCase() !== shown.toUpperCase());
  const alike = new Set(
    others.filter((other) => strokesApart(shown, other) === 0).map((other) => other.toUpperCase()),
  );
  return others.flatMap((seen): LookAlike[] => {
    const apart = strokesApart(shown, seen);
    const chance = apart === 0 ? same / alike.size : byStrokes[apart];
    return chance === undefined ? [] : [[shown, seen, chance]];
  });
}

/** Case decides here: a small b has six strokes of 8 less one, a capital B all of them. */
export const sevenSegment = confusionModel('seven-segment', drawn.flatMap(lookAlikesOf), [], drawn);
