/** Codes that a rider cannot tell apart by sight fold to the same text. */
import { type ConfusionModel, generalDisplay } from './confusion.ts';
import { canonicalCode } from './normalise.ts';

/**
 * The look-alike class of a code: its canonical form with every character replaced by the representative of
 * its class (`B` by `8`) and every digraph by its single character (`RN` by `M`). Two codes of one family
 * with the same result differ only by look-alikes. Folding twice changes nothing.
 */
export function foldLookAlikes(code: string, model: ConfusionModel = generalDisplay): string {
  let folded = canonicalCode(code);
  for (const { pair, single } of model.digraphs) folded = folded.replaceAll(pair, single);
  return Array.from(folded, (character) => model.representative.get(character) ?? character).join('');
}
