/** THD written as a ratio where per cent are asked for. */
import type { BenchReading } from '../../base/index.ts';
import { areAlike } from '../../measure/index.ts';
import type { Cell, ProfileSheet } from './cells.ts';

export interface ThdSlip {
  readonly sheet: ProfileSheet;
  readonly readings: readonly BenchReading[];
  readonly against: string;
  readonly witness?: BenchReading;
}

/** The readings of one profile whose THD is a hundredth of what it should be, told by whatever tells it. */
export function slipsOfThd(sheet: ProfileSheet, sheets: readonly ProfileSheet[]): ThdSlip | undefined {
  const rated = sheet.cells.filter((cell) => cell.thdPercent !== null);
  if (rated.length === 0) return undefined;
  return byFloor(sheet, rated) ?? bySessions(sheet, rated, sheets) ?? bySteps(sheet);
}

/** Whether a THD is a hundredth of another, within what two analysers and their floors make of one THD. */
function isHundredth(thdPercent: number, otherPercent: number): boolean {
  const ratio = (100 * thdPercent) / otherPercent;
  return thdPercent > 0 && ratio > 0.65 && ratio < 1.5;
}

/** Most of the sheet is below the analyser’s floor, and none of it is once taken for a ratio. */
function byFloor(sheet: ProfileSheet, rated: readonly Cell[]): ThdSlip | undefined {
  const { thdFloorPercent } = sheet.session.data.instrument;
  if (thdFloorPercent === undefined || rated.length < 3) return undefined;
  const below = rated.filter((cell) => (cell.thdPercent ?? 0) < 0.8 * thdFloorPercent);
  const isRatio = rated.every(({ thdPercent }) => {
    const percent = 100 * (thdPercent ?? 0);
    return percent >= 0.8 * thdFloorPercent && percent <= 100;
  });
  if (!isRatio || below.length * 2 < rated.length) return undefined;
  return { sheet, readings: rated.flatMap(withThd), against: 'what the analyser can tell at the least' };
}

function bySessions(
  sheet: ProfileSheet,
  rated: readonly Cell[],
  sheets: readonly ProfileSheet[],
): ThdSlip | undefined {
  for (const other of sheets) {
    if (other === sheet || !areAlike(sheet.session.data, other.session.data)) continue;
    const apart = rated.filter((cell) => {
      const beside = other.byKey.get(cell.key)?.thdPercent;
      return typeof beside === 'number' && isHundredth(cell.thdPercent ?? 0, beside);
    });
    const witness = apart[0] && other.byKey.get(apart[0].key)?.readings[0];
    // One cell alone may be where a unit just begins to clip, and one bench’s did not.
    if (apart.length < 3 || !witness) continue;
    return { sheet, readings: apart.flatMap(withThd), against: `what ${other.session.id} reads`, witness };
  }
  return undefined;
}

/** Single rows a hundredth of both rows beside them. */
function bySteps(sheet: ProfileSheet): ThdSlip | undefined {
  const apart = sheet.series.flatMap((series) => {
    const rated = series.filter((cell) => cell.thdPercent !== null);
    return rated.filter((cell, at) => {
      const own = cell.thdPercent ?? 0;
      const isFarBelow = (one: Cell | undefined): boolean => !one || own < 0.05 * (one.thdPercent ?? 0);
      if (own === 0 || !isFarBelow(rated[at - 1]) || !isFarBelow(rated[at + 1])) return false;
      const beside = [rated[at - 1], rated[at + 1]].flatMap((one) => one?.thdPercent ?? []);
      if (beside.length === 0) return false;
      return 100 * own > 0.65 * Math.min(...beside) && 100 * own < 1.5 * Math.max(...beside);
    });
  });
  const repeats = sheet.cells.flatMap(({ readings, thdPercent }) =>
    thdPercent === null || readings.length < 3 || apart.some((cell) => cell.readings === readings)
      ? []
      : readings.filter((one) => one.thdPercent !== null && isHundredth(one.thdPercent, thdPercent)),
  );
  const readings = [...apart.flatMap(withThd), ...repeats];
  return readings.length === 0
    ? undefined
    : { sheet, readings, against: `what the ${apart.length > 0 ? 'steps' : 'repeats'} beside it read` };
}

function withThd(cell: Cell): BenchReading[] {
  return cell.readings.filter((one) => one.thdPercent !== null);
}
