/** Slips of unit told by what an output can give at all: for sheets that nothing else can be held against. */
import type { Family } from '../../../schemas/index.ts';
import type { Cell, ProfileSheet } from './cells.ts';
import { type Slip, slipOf } from './slip.ts';
import { slipKind } from './slip-kinds.ts';
import { jumpsOf } from './slips-within-sheet.ts';
import { voltsLimit } from './volts-limit.ts';

/**
 * A sheet whose volts rise evenly to more than the output can give, and to just what it can once a slip is
 * undone: then all of it has the slip.
 */
export function slipsByLimit(
  sheet: ProfileSheet,
  confirmed: ReadonlySet<Cell>,
  topology: Family['output']['topology'],
): Slip[] {
  const over: { cell: Cell; share: number }[] = [];
  for (const cell of sheet.cells) {
    const share = cell.volts / voltsLimit(cell, sheet.session.data, topology).volts;
    if (share > leastOver) over.push({ cell, share });
  }
  const rows = over.reduce((sum, { cell }) => sum + cell.readings.length, 0);
  if (rows < 2 || over.some(({ cell }) => confirmed.has(cell))) return [];
  if (!over.every(({ cell }) => isInLine(sheet, cell))) return [];
  const most = Math.max(...over.map(({ share }) => share));
  for (const id of ['peak', 'peak-to-peak', 'millivolts'] as const) {
    const kind = slipKind(id);
    const undone = most / (kind.factor ?? 1);
    if (undone > leastOver || undone < (id === 'millivolts' ? 0.02 : leastShare)) continue;
    const playing = sheet.cells.filter((cell) => cell.volts > 0);
    return [slipOf(sheet, kind, playing, 'what this output can give at the most', over[0]?.cell.readings[0])];
  }
  return [];
}

/** A share of the limit above this is over it, whatever voltmeter and supply allow. */
const leastOver = 1.03;

/** A profile that reaches the supply gives at least this share of what the supply allows: common practice, no source. */
const leastShare = 0.72;

/** Whether a cell is no outlier in the steps beside it: rising evenly with them, if there are any. */
function isInLine(sheet: ProfileSheet, cell: Cell): boolean {
  const series = sheet.series.find((one) => one.includes(cell)) ?? [];
  if (series.length < 4) return true;
  const at = series.indexOf(cell);
  const jumps = jumpsOf(series);
  return [jumps[at - 1], jumps[at]].every((jump) => jump === undefined || Math.abs(jump) < 2.5);
}
