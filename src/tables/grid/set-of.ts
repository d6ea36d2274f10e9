/** Pieces of a grid put together again: as a set of values, as one value out of them. */
import { dateOf } from '../sets/days.ts';
import { everything, type Interval, nothing, type ValueSet } from '../sets/value-set.ts';
import type { Value } from '../table.ts';
import { type GridInput, type Piece, sample } from './grid.ts';

/**
 * The values of some pieces of an input; `everything` where they are all it can be. At the ends of what the input can be
 * there is no bound.
 * @param chosen indices of pieces, rising.
 */
export function setOf({ input, pieces }: GridInput, chosen: readonly number[]): ValueSet {
  if (chosen.length === pieces.length) return everything;
  const set = chosen.map((index) => pieces[index]).filter((piece) => piece !== undefined);
  const missing = set.some((piece) => 'missing' in piece);
  if (input.type.kind === 'number' || input.type.kind === 'date') {
    const known = pieces.filter((piece) => 'low' in piece);
    const intervals = runsOf(chosen.filter((index) => 'low' in (pieces[index] ?? {}))).map(
      ([from, to]): Interval => {
        const [first, last] = [known[from], known[to]];
        const open = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
        const { low } = from === 0 || !first ? open : first;
        const { high } = to === known.length - 1 || !last ? open : last;
        return {
          low,
          lowClosed: Number.isFinite(low) && first?.low === first?.high,
          high,
          highClosed: Number.isFinite(high) && last?.low === last?.high,
        };
      },
    );
    return { ...nothing, intervals, missing };
  }
  const valuesOf = (some: readonly Piece[]): (string | boolean)[] =>
    some.flatMap((piece) => ('value' in piece ? [piece.value] : []));
  if (set.some((piece) => 'other' in piece)) {
    const left = pieces.filter((piece) => !set.includes(piece));
    return { ...nothing, values: valuesOf(left), allBut: true, missing };
  }
  return { ...nothing, values: valuesOf(set), missing };
}

/** Indices that follow each other, as first and last. */
export function runsOf(indices: readonly number[]): [from: number, to: number][] {
  const runs: [number, number][] = [];
  for (const index of indices) {
    const last = runs.at(-1);
    if (last && last[1] === index - 1) last[1] = index;
    else runs.push([index, index]);
  }
  return runs;
}

/**
 * One value out of some pieces, as it is given to a table: a known one if there is any, rather one between two
 * thresholds than one on them.
 */
export function exampleOf({ input, pieces }: GridInput, chosen: readonly number[]): Value {
  const some = chosen.map((index) => pieces[index]).filter((piece) => piece !== undefined);
  const worth = (piece: Piece): number =>
    'missing' in piece
      ? 0
      : !('low' in piece)
        ? 'other' in piece
          ? 1
          : 2
        : piece.low === piece.high
          ? 1
          : Number.isFinite(piece.low) && Number.isFinite(piece.high)
            ? 3
            : 2;
  const [best] = some.toSorted((a, b) => worth(b) - worth(a));
  if (!best) return null;
  if ('other' in best) return unnamed(pieces);
  const value = sample(best);
  return input.type.kind === 'date' && typeof value === 'number' ? dateOf(value) : value;
}

/** A text that no rule names. */
function unnamed(pieces: readonly Piece[]): string {
  const named = new Set(pieces.flatMap((piece) => ('value' in piece ? [piece.value] : [])));
  let text = 'another';
  while (named.has(text)) text += ' one';
  return text;
}
