/** What to say above the results of a lookup. */
import { adviceFor } from '../codes/index.ts';
import type { ListSearch } from './list-search.ts';

const onlyPart =
  'Only codes that begin or end like this were searched. The page of your unit leads to a search of all of its codes.';

/** The advice for a search, and what to do with the results that stand beneath it. */
export function verdictWords(search: ListSearch): string {
  const { verdict, candidates, longer = 0, isPart } = search;
  const [best] = candidates;
  if (longer > 0 && (verdict === 'unknown' || verdict === 'partial')) {
    return `About ${Math.ceil(longer)} codes begin like this: go on typing.`;
  }
  const advice = isPart ? `${adviceFor(search)} ${onlyPart}` : adviceFor(search);
  if (verdict === 'found' && best && !isAsTyped(best.note)) {
    return `${advice} Compare it with your screen, character by character.`;
  }
  if (verdict === 'unknown' && best) return `${advice} These come nearest.`;
  return advice;
}

/** Whether a candidate's note says that it is what was typed. */
export function isAsTyped(note: string): boolean {
  return note.startsWith('exactly as typed') || note.startsWith('same code');
}
