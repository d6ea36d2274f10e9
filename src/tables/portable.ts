/** A cut table as JSON, for where tests are not read: ends at infinity as null, what rules let through as digits. */
import type { CutTable, GridInput, Piece } from './grid/grid.ts';

type PortablePiece = Piece | { readonly low: number | null; readonly high: number | null };

export interface PortableTable extends Omit<CutTable, 'grid'> {
  /** One an input, in their order. */
  readonly grid: readonly {
    readonly pieces: readonly PortablePiece[];
    /** For each rule a digit a piece: 1 where it lets it through. */
    readonly passes: readonly string[];
  }[];
}

export function toPortable({ rules, grid, ...table }: CutTable): PortableTable {
  return {
    ...table,
    rules: rules.map(({ id, results }) => ({ id, results })),
    grid: grid.map(({ pieces, passes }) => ({
      pieces: pieces.map((piece) =>
        'low' in piece ? { low: finite(piece.low), high: finite(piece.high) } : piece,
      ),
      passes: passes.map((marks) => marks.join('')),
    })),
  };
}

function finite(end: number): number | null {
  return Number.isFinite(end) ? end : null;
}

export function fromPortable(portable: PortableTable): CutTable {
  const { inputs, grid } = portable;
  return {
    ...portable,
    grid: inputs.map((input, index): GridInput => {
      const { pieces = [], passes = [] } = grid[index] ?? {};
      return {
        input,
        pieces: pieces.map((piece) =>
          'low' in piece
            ? { low: piece.low ?? Number.NEGATIVE_INFINITY, high: piece.high ?? Number.POSITIVE_INFINITY }
            : piece,
        ),
        passes: passes.map((digits) => Uint8Array.from([...digits], Number)),
      };
    }),
  };
}
