/** The search behind every code field. */
import type { Lookup } from './code-index.ts';
import { type Asking, type ListSearch, mostLoaded } from './list-search.ts';
import { codesWithin } from './query.ts';

/**
 * The search for what was typed or pasted. Where that as a whole is no code but holds one, as in a copied
 * message, the code is what is searched for.
 * @param unit the only family to search, by its id; one that is not known narrows nothing down.
 * @param isCurrent false once something else has been typed: then there may be no answer.
 * @throws where the list cannot be loaded.
 */
export async function searchFor(
  { find, familyNames }: Lookup,
  typed: string,
  unit: string | undefined,
  isCurrent: () => boolean,
): Promise<ListSearch | undefined> {
  const family = unit !== undefined && familyNames.has(unit) ? unit : undefined;
  const options = { limit: 6, ...(family !== undefined && { family }) };
  const asking: Asking = { isCurrent, left: mostLoaded, hasWaited: false };
  const whole = await find(typed, options, asking);
  if (whole?.verdict !== 'unknown') return whole;
  for (const part of codesWithin(typed)) {
    const within = await find(part, options, asking);
    if (!within) return undefined;
    if (within.verdict === 'found' || within.verdict === 'look-again') return within;
  }
  return whole;
}
