/** The kinds of screen: how each is misread, and which codes look the same on it. */
import type { Family } from '../../schemas/index.ts';
import { type ConfusionModel, meanModel } from './confusion.ts';
import { antiAliased } from './displays/anti-aliased.ts';
import { dotMatrix } from './displays/dot-matrix.ts';
import { sevenSegment } from './displays/seven-segment.ts';
import { shownForm } from './normalise.ts';

export type Display = Family['face']['screen']['display'];

const models: Readonly<Record<Display, ConfusionModel>> = {
  'dot-matrix': dotMatrix,
  'seven-segment': sevenSegment,
  'anti-aliased': antiAliased,
};

/** Their digraphs, as they are looked for. */
const pairs: Readonly<Record<Display, readonly { readonly pair: RegExp; readonly single: string }[]>> = {
  'dot-matrix': pairsOf(dotMatrix),
  'seven-segment': pairsOf(sevenSegment),
  'anti-aliased': pairsOf(antiAliased),
};

function pairsOf({ digraphs }: ConfusionModel): { pair: RegExp; single: string }[] {
  return digraphs.map(({ pair, single }) => ({ pair: new RegExp(pair, 'giu'), single }));
}

/** For a code of which no display is told: the mean of all three. */
export const anyDisplay = meanModel('any', [antiAliased, dotMatrix, sevenSegment]);

/** How a kind of display is misread; the mean of all where none is told. */
export function modelOf(display: Display | undefined): ConfusionModel {
  return display === undefined ? anyDisplay : models[display];
}

/**
 * The look-alike class of a code on a kind of screen: every character replaced by the representative of its
 * class, every digraph by its single character. Two codes of one class cannot be told apart by sight. Folding
 * twice changes nothing.
 */
export function foldOnScreen(code: string, display: Display): string {
  const { representative } = models[display];
  let shown = shownForm(code);
  for (const { pair, single } of pairs[display]) shown = shown.replaceAll(pair, single);
  return Array.from(shown, (character) => representative.get(character) ?? character).join('');
}
