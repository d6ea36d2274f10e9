/** Cubes in terms of the table: sets of values, words, an example. */
import { describeBox } from '../grid/describe.ts';
import { exampleOf, setOf } from '../grid/set-of.ts';
import type { ValueSet } from '../sets/value-set.ts';
import type { Given } from '../table.ts';
import { type Cube, piecesIn, type Space } from './space.ts';

/** A box of values: every combination of what its sets hold. */
export interface Box {
  /** For each input of the table, in their order; `everything` where it may be anything. */
  readonly sets: readonly ValueSet[];
  /** “clean volts over 4.2 V, rear needed”: inputs that may be anything are left out. */
  readonly words: string;
  /** One combination in it, values by input id; known ones where it holds any. */
  readonly example: Given;
}

export function boxOfCube(space: Space, cube: Cube): Box {
  return boxOfPieces(space, piecesIn(space, cube));
}

/** @param pieces for each input the indices of its pieces, rising. */
export function boxOfPieces({ grid, table }: Space, pieces: readonly (readonly number[])[]): Box {
  const sets = grid.map((each, index) => setOf(each, pieces[index] ?? []));
  const example = Object.fromEntries(
    grid.map((each, index) => [each.input.id, exampleOf(each, pieces[index] ?? [])] as const),
  );
  return { sets, words: describeBox(sets, table.inputs), example };
}
