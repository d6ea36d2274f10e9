/** "Did you mean": the known word nearest to one that is not known. */
import { distance } from 'fastest-levenshtein';

/**
 * The known word that takes the fewest single-character edits (Levenshtein) to reach, or undefined
 * where none is within a third of the word's length, at least two edits.
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const allowed = Math.max(2, Math.floor(word.length / 3));
  let best: string | undefined;
  let bestDistance = allowed + 1;
  for (const candidate of known) {
    const edits = distance(word.toLowerCase(), candidate.toLowerCase());
    if (edits < bestDistance) {
      best = candidate;
      bestDistance = edits;
    }
  }
  return best;
}
