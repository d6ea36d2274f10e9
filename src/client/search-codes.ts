/** The search behind every code field. */
import { type CodeSearch, findCode } from '../codes/index.ts';
import { phrase } from '../words/index.ts';
import type { Lookup } from './code-index.ts';
import { codesWithin } from './query.ts';

export function noSignal(): string {
  return phrase('The list of codes did not come through. Check the signal and type again.');
}

/**
 * The search for what was typed or pasted. Where that as a whole is no code but holds one, as in a copied
 * message, the code is what is searched for.
 * @param unit the only family to search, by its id; one that is not known narrows nothing down.
 */
export function searchFor(
  { index, familyNames }: Lookup,
  typed: string,
  unit: string | undefined,
): CodeSearch {
  const family = unit !== undefined && familyNames.has(unit) ? unit : undefined;
  const options = { limit: 6, ...(family !== undefined && { family }) };
  const whole = findCode(index, typed, options);
  if (whole.verdict !== 'unknown') return whole;
  const within = codesWithin(typed).map((part) => findCode(index, part, options));
  return within.find(({ verdict }) => verdict === 'found' || verdict === 'look-again') ?? whole;
}
