/** What to say above the results of a lookup. */
import { adviceFor } from '../codes/index.ts';
import { phrase } from '../words/index.ts';
import type { ListSearch } from './list-search.ts';

/** The advice for a search, and what to do with the results that stand beneath it. */
export function verdictWords(search: ListSearch): string {
  const { verdict, candidates, longer = 0, isPart } = search;
  const [best] = candidates;
  if (longer > 0 && (verdict === 'unknown' || verdict === 'partial')) {
    return phrase('About {number} codes begin like this: go on typing.', { number: `${Math.ceil(longer)}` });
  }
  const advice = isPart
    ? `${adviceFor(search)} ${phrase('Only codes that begin or end like this were searched. The page of your unit leads to a search of all of its codes.')}`
    : adviceFor(search);
  if (verdict === 'found' && best?.likeness === 'near') {
    return `${advice} ${phrase('Compare it with your screen, character by character.')}`;
  }
  if (verdict === 'unknown' && best) return `${advice} ${phrase('These come nearest.')}`;
  return advice;
}
