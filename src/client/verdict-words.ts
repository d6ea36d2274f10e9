/** What to say above the results of a lookup. */
import { adviceFor, type CodeSearch } from '../codes/index.ts';
import { phrase } from '../words/index.ts';

/** The advice for a search, and what to do with the results that stand beneath it. */
export function verdictWords(search: CodeSearch): string {
  const { verdict, candidates } = search;
  const [best] = candidates;
  const advice = adviceFor(search);
  if (verdict === 'found' && best?.likeness === 'near') {
    return `${advice} ${phrase('Compare it with your screen, character by character.')}`;
  }
  if (verdict === 'unknown' && best) return `${advice} ${phrase('These come nearest.')}`;
  return advice;
}
