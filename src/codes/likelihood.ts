/** How likely a typed text is, given the code on the screen. */
import { compare } from './alignment.ts';
import type { ConfusionModel } from './confusion.ts';
import { alphabetSize, longestCompared, stoppedEarly } from './constants.ts';
import { anyDisplay } from './screens.ts';

/**
 * P(typed | code), both canonical (see `canonicalCode`; the code may keep the case of the screen), under the
 * misread model of `alignment.ts` with the rates of `constants.ts`. `complete` takes the text for an attempt at
 * the whole code. `prefix` allows that it is only a beginning: each unread character costs a factor, so a
 * complete match still wins.
 *
 * Over all texts of the model's alphabet the chances sum to at most one. They fall short of it because, of
 * several numbers of leading zeros, only the one typed is followed, and because an early stop is given no
 * lower limit though codes have one. A character outside the alphabet counts as if it were in it.
 */
export function likelihood(
  typed: string,
  code: string,
  mode: 'complete' | 'prefix' = 'complete',
  model: ConfusionModel = anyDisplay,
): number {
  const { complete, beginning } = compare(typed, code.toUpperCase(), model, { shown: code });
  const ratio = mode === 'complete' ? complete : (1 - stoppedEarly) * complete + beginning;
  return ratio * alphabetSize ** -Math.min(typed.length, longestCompared);
}
