/** Cuts a table into its grid: by the tests of its rules. */
import { daysOf } from '../sets/days.ts';
import { holds, type ValueSet } from '../sets/value-set.ts';
import type { Table, TableInput } from '../table.ts';
import { type CutTable, cutAt, type Grid, hasValueBetween, type Piece, sample } from './grid.ts';

/** Whether every test of the table is simple enough for a grid. */
export function isAnalysable(table: Table): boolean {
  return table.rules.every(({ cells }) => cells.every(({ set }) => set !== undefined));
}

/** Each table is cut once; what is known of a profile only cuts some of its pieces further. */
const cutOnce = new WeakMap<Table, Grid>();

/**
 * The grid of a table.
 * @param cuts further numbers, by input id, to cut at: the ends of an uncertain value.
 * @throws where a test is no simple one: see {@link isAnalysable}.
 */
export function gridOf(table: Table, cuts: Readonly<Record<string, readonly number[]>> = {}): Grid {
  const grid = cutOnce.get(table) ?? plainGrid(table);
  cutOnce.set(table, grid);
  return cutAt(grid, cuts);
}

const cutTables = new WeakMap<Table, CutTable>();

/** @throws as {@link gridOf} */
export function cutTable(table: Table): CutTable {
  const cut = cutTables.get(table) ?? { ...table, grid: gridOf(table) };
  cutTables.set(table, cut);
  return cut;
}

function plainGrid(table: Table): Grid {
  return table.inputs.map((input, index) => {
    const sets = table.rules.map(({ id, cells }): ValueSet => {
      const set = cells[index]?.set;
      if (!set) throw new Error(`rule ${id} has a test that is no simple one`);
      return set;
    });
    const pieces = piecesOf(input, sets);
    const passes = sets.map((set) => Uint8Array.from(pieces, (piece) => Number(holds(set, sample(piece)))));
    return { input, pieces, passes };
  });
}

function piecesOf(input: TableInput, sets: readonly ValueSet[]): Piece[] {
  return [...knownPieces(input, sets), ...(input.mayBeMissing ? [{ missing: true } as const] : [])];
}

function knownPieces({ type }: TableInput, sets: readonly ValueSet[]): Piece[] {
  switch (type.kind) {
    case 'yes-no':
      return [{ value: true }, { value: false }];
    case 'choice':
      return type.values.map((value) => ({ value }));
    case 'text': {
      const named = new Set(sets.flatMap(({ values }) => values));
      return [...[...named].map((value) => ({ value })), { other: true }];
    }
    case 'number':
      return orderedPieces(sets, type.whole ?? false, type.least, type.most);
    case 'date':
      return orderedPieces(sets, true, daysOf(type.least ?? ''), daysOf(type.most ?? ''));
  }
}

function orderedPieces(
  sets: readonly ValueSet[],
  whole: boolean,
  least = Number.NEGATIVE_INFINITY,
  most = Number.POSITIVE_INFINITY,
): Piece[] {
  const ends = sets.flatMap(({ intervals }) => intervals.flatMap(({ low, high }) => [low, high]));
  const inside = [...ends, least, most].filter((one) => Number.isFinite(one) && one >= least && one <= most);
  const points = [...new Set(inside)].sort((a, b) => a - b);
  const pieces: Piece[] = [];
  let before = Number.NEGATIVE_INFINITY;
  for (const point of [...points, Number.POSITIVE_INFINITY]) {
    const between = before >= least && point <= most;
    const lowest = before === Number.NEGATIVE_INFINITY && least !== Number.NEGATIVE_INFINITY;
    if (between && !lowest && hasValueBetween(before, point, whole))
      pieces.push({ low: before, high: point });
    if (Number.isFinite(point) && (!whole || Number.isInteger(point)))
      pieces.push({ low: point, high: point });
    before = point;
  }
  return pieces.filter((piece) => !('low' in piece) || (piece.low >= least && piece.high <= most));
}
