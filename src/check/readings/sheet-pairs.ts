/** Two sheets held against each other, cell by cell, as wide as their sessions admit. */
import { type Cell, median, type ProfileSheet, toleranceOf } from './cells.ts';
import { widestTolerance } from './slip-kinds.ts';

/** Fewer cells in common do not show which profile they are of. */
export const leastCommon = 12;
/** Of the cells compared this part has to fit where readings are said to belong. */
export const leastFit = 0.95;

/** What two sheets have in common, and what of it contradicts. */
export interface Comparison {
  /** How many cells could be compared. */
  readonly common: number;
  /** The cells of the first sheet that the second contradicts. */
  readonly apart: readonly Cell[];
}

/** Whether two cells read the same within their tolerances; undefined where they are too coarse, or silent, to tell. */
export function agree(a: Cell, ofA: ProfileSheet, b: Cell, ofB: ProfileSheet): boolean | undefined {
  if (a.volts === 0 || b.volts === 0) return undefined;
  const tolerance = toleranceOf(a, ofA, 'others') + toleranceOf(b, ofB, 'others');
  return tolerance > widestTolerance ? undefined : Math.abs(Math.log(a.volts / b.volts)) <= tolerance;
}

/** Holds the cells of `a` against those of `b` at the same output, step and frequency. */
export function compared(a: ProfileSheet, b: ProfileSheet): Comparison {
  let common = 0;
  const apart: Cell[] = [];
  for (const cell of a.cells) {
    const other = b.byKey.get(cell.key);
    const fits = other && agree(cell, a, other, b);
    if (fits === undefined) continue;
    common += 1;
    if (!fits) apart.push(cell);
  }
  return { common, apart };
}

/** Whether two sheets have enough in common, nearly all of it alike. */
export function mostlyAgree(a: ProfileSheet, b: ProfileSheet): boolean {
  const { common, apart } = compared(a, b);
  return common >= leastCommon && common - apart.length >= leastFit * common;
}

/** The factor by which nearly all cells of `a` read more than those of `b`; undefined where they differ in shape. */
export function scaleBetween(a: ProfileSheet, b: ProfileSheet): number | undefined {
  const ratios = a.cells.flatMap((cell) => {
    const other = b.byKey.get(cell.key);
    if (!other || other.volts === 0 || cell.volts === 0) return [];
    const tolerance = toleranceOf(cell, a, 'own') + toleranceOf(other, b, 'own');
    return tolerance > widestTolerance ? [] : [{ ratio: Math.log(cell.volts / other.volts), tolerance }];
  });
  const middle = median(ratios.map(({ ratio }) => ratio));
  if (middle === undefined) return undefined;
  const even = ratios.filter(({ ratio, tolerance }) => Math.abs(ratio - middle) <= tolerance);
  return even.length < leastFit * ratios.length ? undefined : Math.exp(middle);
}

/** Cells in the order of the sheet. */
export function inOrder(cells: readonly Cell[]): Cell[] {
  const line = ({ readings: [first] }: Cell): number =>
    Number(first?.id.slice(first.id.lastIndexOf(':') + 1) ?? 0);
  return [...cells].sort((a, b) => line(a) - line(b));
}
