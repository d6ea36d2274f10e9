/** Which codes look the same on which kind of screen. */
import type { Family } from '../../schemas/index.ts';
import { type ConfusionModel, generalDisplay } from './confusion.ts';
import { foldLookAlikes } from './look-alikes.ts';
import { canonicalCode } from './normalise.ts';

export type Display = Family['face']['screen']['display'];

/** Each character stands in a cell of its own, so two never run together into one: no `RN` for `M`. */
const dotMatrix: ConfusionModel = { ...generalDisplay, display: 'dot-matrix', digraphs: [] };

/**
 * Seven strokes: 0 and O, 1 and I, 5 and S, 2 and Z light the very same ones, a capital B and D those of 8
 * and 0; a small b differs from 6, a q from 9, a G from 6 by one stroke, which some displays leave out.
 * Case decides: 8 and a small b differ by two strokes, 0 and a small d by two. From memory of the common
 * glyphs, which Unicode's segmented digits (U+1FBF0 to U+1FBF9) show as well.
 */
const sevenSegment: ReadonlyMap<string, string> = new Map(
  ['0OD', '1Il|', '2Zz', '5Ss', '6Gb', '8B', '9gq'].flatMap((alike) =>
    Array.from(alike, (character): [string, string] => [character, alike.charAt(0)]),
  ),
);

/** The look-alike class of a code on a kind of screen: two codes of one class cannot be told apart by sight. */
export function foldOnScreen(code: string, display: Display): string {
  if (display === 'seven-segment') {
    return canonicalCode(Array.from(code, (character) => sevenSegment.get(character) ?? character).join(''));
  }
  return foldLookAlikes(code, display === 'dot-matrix' ? dotMatrix : generalDisplay);
}
