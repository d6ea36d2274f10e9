/** What to say above the results of a lookup. */
import { adviceFor, type CodeSearch } from '../codes/index.ts';

/** The advice for a search, and what to do with the results that stand beneath it. */
export function verdictWords(search: CodeSearch): string {
  const { verdict, candidates } = search;
  const [best] = candidates;
  const advice = adviceFor(search);
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
