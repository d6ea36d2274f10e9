/** Which pieces of an input a value may lie in, while it is known only in part. */
import type { Known } from '../known.ts';
import { type GridInput, pieceOf } from './grid.ts';

/** The pieces a value may lie in: all those that its interval touches. */
export function openPieces(input: GridInput, known: Known): number[] {
  const { pieces } = input;
  if ('low' in known) {
    const { low, high } = known;
    const whole = input.input.type.kind === 'number' && input.input.type.whole === true;
    return [...pieces.keys()].filter((index) => {
      const piece = pieces[index];
      if (!piece || !('low' in piece)) return false;
      if (piece.low === piece.high) return piece.low >= low && piece.low <= high;
      if (!whole) return piece.low < high && piece.high > low;
      const first = Math.max(Math.floor(piece.low) + 1, Math.ceil(low));
      return first <= high && first < piece.high;
    });
  }
  if ('anything' in known) {
    return [...pieces.keys()].filter((index) => !('missing' in (pieces[index] ?? {})));
  }
  const values = 'oneOf' in known ? known.oneOf : [known.value];
  return values.flatMap((value) => pieceOf(input, value) ?? []);
}
