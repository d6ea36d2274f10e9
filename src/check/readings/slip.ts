/** A slip of unit found in a sheet. */
import type { BenchReading } from '../../base/index.ts';
import { dbv, relativeToDb } from '../../measure/index.ts';
import { type Cell, type ProfileSheet, toleranceOf } from './cells.ts';
import { inverseOf, type SlipKind, slipBetween } from './slip-kinds.ts';

export interface Slip {
  readonly sheet: ProfileSheet;
  readonly kind: SlipKind;
  /** The readings at fault, all of one kind. */
  readonly readings: readonly BenchReading[];
  /** What the first of them should read, volts. */
  readonly expectedVolts: number;
  /** What they were held against, to follow “times” or “of”: “what 2025-03-van reads”. */
  readonly against: string;
  /** A reading of another sheet, or another row of this one, they were held against. */
  readonly witness?: BenchReading;
}

/** A slip of whole cells; the first of them, in the order of the sheet, is what it is shown at. */
export function slipOf(
  sheet: ProfileSheet,
  kind: SlipKind,
  cells: readonly Cell[],
  against: string,
  witness?: BenchReading,
): Slip {
  const readings = cells.flatMap((cell) => cell.readings);
  const first = readings[0]?.voltsRms ?? Number.NaN;
  const slip = { sheet, kind, readings, expectedVolts: kind.meant(first), against };
  return witness ? { ...slip, witness } : slip;
}

/** A repeat that is off the others of its cell by a slip of unit. */
export function slipsOfRepeats(sheet: ProfileSheet): Slip[] {
  return sheet.cells.flatMap((cell): Slip[] => {
    if (cell.readings.length < 2 || cell.volts === 0) return [];
    const tolerance = (volts: number): number => 2 * toleranceOf(cell, sheet, 'own', volts);
    const apart = cell.readings.filter((one) => slipBetween(one.voltsRms, cell.volts, tolerance));
    const [first] = apart;
    const kind = first && slipBetween(first.voltsRms, cell.volts, tolerance);
    const witness = cell.readings.find((one) => one.voltsRms === cell.volts);
    if (!kind || !witness || apart.length * 2 > cell.readings.length) return [];
    const [fallen, inverse] = [kind, inverseOf(kind)];
    // Of two repeats the lower is taken for right, unless it is a thousandth of a plausible one.
    const swap =
      cell.readings.length === 2 && fallen.id === 'millivolts' && cell.volts < leastPlayed && inverse;
    return swap
      ? [
          {
            sheet,
            kind: inverse,
            readings: [witness],
            expectedVolts: first.voltsRms,
            against: repeats,
            witness: first,
          },
        ]
      : [{ sheet, kind, readings: apart, expectedVolts: cell.volts, against: repeats, witness }];
  });
}

const repeats = 'what the other repeats read';

/** An output that plays gives more than this, volts: common practice, no source. */
export const leastPlayed = 0.01;

/**
 * How uneven a sheet is along steps and frequencies: what the level of each cell lies off the line through
 * the two beside it, dB, added up over the cells within two places of those in `changed`. With `kind` those
 * are first read as what they would mean.
 */
export function unevennessDb(
  lines: readonly (readonly Cell[])[],
  changed: ReadonlySet<Cell>,
  kind?: SlipKind,
): number {
  const level = (cell: Cell): number => dbv(kind && changed.has(cell) ? kind.meant(cell.volts) : cell.volts);
  let sum = 0;
  for (const line of lines) {
    for (let at = 1; at + 1 < line.length; at += 1) {
      const [before, here, after] = [line[at - 1], line[at], line[at + 1]];
      if (!before || !here || !after) continue;
      if (!changed.has(before) && !changed.has(here) && !changed.has(after)) continue;
      const along =
        before.step === after.step
          ? Math.log(here.hz / before.hz) / Math.log(after.hz / before.hz)
          : (here.step - before.step) / (after.step - before.step);
      sum += Math.abs(level(here) - ((1 - along) * level(before) + along * level(after)));
    }
  }
  return sum;
}

/** A relative tolerance as decibels. */
export const asDb = relativeToDb;
