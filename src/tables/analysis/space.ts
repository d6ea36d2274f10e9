/**
 * The values a table’s inputs can take, as bits: pieces that no rule tells apart are one class, a set of classes of
 * every input is a cube. Everything in this folder reckons with cubes and so is exact.
 */
import { gridOf } from '../grid/cut-table.ts';
import type { Grid } from '../grid/grid.ts';
import type { Table } from '../table.ts';

/** A box of values: one bit a class, each input beginning at a word of its own. */
export type Cube = Uint32Array<ArrayBuffer>;

export interface Space {
  readonly table: Table;
  readonly grid: Grid;
  /** For each input its classes, each the indices of its pieces, rising; “not known” is a class of its own. */
  readonly classes: readonly (readonly (readonly number[])[])[];
  /** Where the words of each input begin, and after the last one the number of words. */
  readonly starts: readonly number[];
  /** Every value. */
  readonly all: Cube;
  /** What each rule lets through. */
  readonly rules: readonly Cube[];
}

/** @throws where a test is no simple one: see `isAnalysable`. */
export function spaceOf(table: Table): Space {
  const grid = gridOf(table);
  const classes = grid.map(({ pieces, passes }) => {
    const alike = Map.groupBy(pieces.keys(), (piece) => {
      const isMissing = 'missing' in (pieces[piece] ?? {});
      return `${isMissing ? '?' : ''}${passes.map((each) => each[piece]).join('')}`;
    });
    return [...alike.values()];
  });
  const starts = [0];
  for (const each of classes) starts.push((starts.at(-1) ?? 0) + Math.ceil(each.length / 32));
  const cube = (lets: (input: number, piece: number) => boolean): Cube => {
    const bits = new Uint32Array(starts.at(-1) ?? 0);
    for (const [input, each] of classes.entries()) {
      for (const [index, [piece = 0]] of each.entries()) {
        if (lets(input, piece)) setBit(bits, starts[input] ?? 0, index);
      }
    }
    return bits;
  };
  return {
    table,
    grid,
    classes,
    starts,
    all: cube(() => true),
    rules: table.rules.map((_, rule) => cube((input, piece) => grid[input]?.passes[rule]?.[piece] === 1)),
  };
}

export function setBit(bits: Cube, start: number, index: number): void {
  const at = start + (index >>> 5);
  bits[at] = ((bits[at] ?? 0) | (1 << (index & 31))) >>> 0;
}

/** The classes of an input that are in a cube. */
export function classesIn({ classes, starts }: Space, cube: Cube, input: number): number[] {
  const start = starts[input] ?? 0;
  return [...(classes[input] ?? []).keys()].filter(
    (index) => (((cube[start + (index >>> 5)] ?? 0) >>> (index & 31)) & 1) === 1,
  );
}

/** The pieces of every input that are in a cube, rising. */
export function piecesIn(space: Space, cube: Cube): number[][] {
  return space.classes.map((classes, input) =>
    classesIn(space, cube, input)
      .flatMap((index) => classes[index] ?? [])
      .sort((a, b) => a - b),
  );
}

/** All values that are known. */
export function knownValues(space: Space): Cube {
  const known = space.all.slice();
  for (const [input, { pieces }] of space.grid.entries()) {
    const missing = (space.classes[input] ?? []).findIndex(
      ([piece = 0]) => 'missing' in (pieces[piece] ?? {}),
    );
    if (missing < 0) continue;
    const at = (space.starts[input] ?? 0) + (missing >>> 5);
    known[at] = ((known[at] ?? 0) & ~(1 << (missing & 31))) >>> 0;
  }
  return known;
}

/** What two cubes have in common; undefined where it is nothing. */
export function common(space: Space, a: Cube, b: Cube): Cube | undefined {
  return meet(space, a, b) ? a.map((word, index) => word & (b[index] ?? 0)) : undefined;
}

/** Whether two cubes have a value in common. */
export function meet(space: Space, a: Cube, b: Cube): boolean {
  for (let input = 0; input + 1 < space.starts.length; input += 1) {
    if (!meetAlong(space, a, b, input)) return false;
  }
  return true;
}

export function meetAlong({ starts }: Space, a: Cube, b: Cube, input: number): boolean {
  const end = starts[input + 1] ?? 0;
  for (let word = starts[input] ?? 0; word < end; word += 1) {
    if (((a[word] ?? 0) & (b[word] ?? 0)) !== 0) return true;
  }
  return false;
}

/** Whether all of `inner` is in `outer`. */
export function within(inner: Cube, outer: Cube): boolean {
  return inner.every((word, index) => (word & ~(outer[index] ?? 0)) === 0);
}

/** Whether the cube holds no value: one of its inputs has none. */
export function isEmpty(space: Space, cube: Cube): boolean {
  return !meet(space, cube, cube);
}

/** The indices of the inputs. */
export function inputsOf(space: Space): readonly number[] {
  return [...space.grid.keys()];
}
