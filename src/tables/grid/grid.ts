/**
 * A table cut into pieces: along each input, the tests of all rules divide the values into pieces within which no
 * rule can tell one value from another. Analysis and uncertain evaluation work on pieces only, and so are exact.
 * Method after Calvanese et al., “Semantics and Analysis of DMN Decision Tables”, BPM 2016.
 */
import { daysOf } from '../sets/days.ts';
import type { Table, TableInput, TableRule } from '../table.ts';

/** Values of one input that every rule treats alike. */
export type Piece =
  /** Numbers or days from `low` to `high`: a single one where they are equal, else those between (ends left out). */
  | { readonly low: number; readonly high: number }
  | { readonly value: string | boolean }
  /** Any text that no rule names. */
  | { readonly other: true }
  /** The value is not known. */
  | { readonly missing: true };

export interface GridInput {
  readonly input: TableInput;
  /** In the order of their values; “not known” last. */
  readonly pieces: readonly Piece[];
  /** For each rule, which pieces it lets through: 1 or 0. */
  readonly passes: readonly Uint8Array[];
}

export type Grid = readonly GridInput[];

/** A table with its grid in the place of its tests: what may fit follows from it alone. */
export interface CutTable extends Omit<Table, 'rules'> {
  readonly rules: readonly Pick<TableRule, 'id' | 'results'>[];
  readonly grid: Grid;
}

/** The grid cut further: at the ends of uncertain values, by input id. */
export function cutAt(grid: Grid, cuts: Readonly<Record<string, readonly number[]>>): Grid {
  return grid.map((one) => cutFurther(one, cuts[one.input.id] ?? []));
}

/** Cuts the pieces between two ends; each part is let through by the rules that let the whole piece through. */
export function cutFurther(one: GridInput, cuts: readonly number[]): GridInput {
  const { type } = one.input;
  const points = [...new Set(cuts)].sort((a, b) => a - b);
  if (points.length === 0 || (type.kind !== 'number' && type.kind !== 'date')) return one;
  const whole = type.kind === 'date' || (type.whole ?? false);
  const parts = one.pieces.flatMap((piece, from) => {
    const inside = 'low' in piece ? points.filter((point) => point > piece.low && point < piece.high) : [];
    if (!('low' in piece) || inside.length === 0) return [{ piece, from }];
    return piecesBetween(piece.low, inside, piece.high, whole).map((part) => ({ piece: part, from }));
  });
  return {
    input: one.input,
    pieces: parts.map(({ piece }) => piece),
    passes: one.passes.map((marks) => Uint8Array.from(parts, ({ from }) => marks[from] ?? 0)),
  };
}

/** The points and what lies before, between and after them; whole numbers alone where only they can be. */
function piecesBetween(low: number, points: readonly number[], high: number, whole: boolean): Piece[] {
  const pieces: Piece[] = [];
  let before = low;
  for (const point of [...points, high]) {
    if (hasValueBetween(before, point, whole)) pieces.push({ low: before, high: point });
    if (point < high && (!whole || Number.isInteger(point))) pieces.push({ low: point, high: point });
    before = point;
  }
  return pieces;
}

/** Whether there is a value between the two: a whole one where only they can be. */
export function hasValueBetween(low: number, high: number, whole: boolean): boolean {
  return low < high && (!whole || Math.floor(low) + 1 < high);
}

/** A value of a piece; numbers for dates, `null` where it is not known. */
export function sample(piece: Piece): number | string | boolean | null {
  if ('value' in piece) return piece.value;
  if ('missing' in piece) return null;
  if ('other' in piece) return otherText;
  const { low, high } = piece;
  if (low === high) return low;
  if (low === Number.NEGATIVE_INFINITY) return high === Number.POSITIVE_INFINITY ? 0 : Math.ceil(high) - 1;
  if (high === Number.POSITIVE_INFINITY) return Math.floor(low) + 1;
  return between(low, high);
}

/** A text that no rule names: none can be, for a unary test cannot hold this character unescaped. */
const otherText = '\u0000';

/** The roundest number between two, a whole one where there is any. */
function between(low: number, high: number): number {
  const wholeNumber = Math.floor((low + high) / 2);
  if (wholeNumber > low && wholeNumber < high) return wholeNumber;
  const next = Math.floor(low) + 1;
  if (next < high) return next;
  for (let digits = 1; digits <= 15; digits += 1) {
    const rounded = Number(((low + high) / 2).toFixed(digits));
    if (rounded > low && rounded < high) return rounded;
  }
  return (low + high) / 2;
}

/** The piece a value lies in; undefined where it is outside what the input can be. */
export function pieceOf(
  { input, pieces }: GridInput,
  value: number | string | boolean | null,
): number | undefined {
  const ordered = input.type.kind === 'date' && typeof value === 'string' ? daysOf(value) : value;
  const index = pieces.findIndex((piece) => {
    if ('missing' in piece) return ordered === null;
    if ('value' in piece) return piece.value === ordered;
    if ('other' in piece) return typeof ordered === 'string';
    if (typeof ordered !== 'number') return false;
    return piece.low === piece.high ? ordered === piece.low : ordered > piece.low && ordered < piece.high;
  });
  return index < 0 ? undefined : index;
}
