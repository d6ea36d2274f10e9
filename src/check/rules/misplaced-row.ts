import type { Base } from '../../base/index.ts';
import { cleanThdPercent, dbv, formatHz, formatNumber } from '../../measure/index.ts';
import { type Cell, legibleOf, type ProfileSheet, toleranceOf } from '../readings/cells.ts';
import { findingsInSheets } from '../readings/sheets.ts';
import { jumpsOf } from '../readings/slips-within-sheet.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const misplacedRow = outputRule<RuleFinding[]>({
  id: 'misplaced-row',
  title: 'Every volume step has a reading of its own, in its own row.',
  explanation:
    'A number copied into the row below, or two rows exchanged, leave a series of rising steps in a way nothing else does: two steps read the same to the last digit although the steps around them rise evenly, or a step falls and the series is even again once two neighbours change places. Only the clean region counts, where every step rises, and only readings of three digits or more.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'the volts of the row above, copied',
      file: 'outputs/2026-02-loft/readings.csv',
      good: 'rt-5561,FL,18,1000,2.2335',
      bad: 'rt-5561,FL,18,1000,1.8782',
      foundAt: '1.8782',
    },
    {
      title: 'two rows exchanged',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,17,1000,0.3146,0.080,1\nmoorlight/kn-2093,FL,18,1000,0.3737',
      bad: 'kn-2093,FL,17,1000,0.3737,0.080,1\nmoorlight/kn-2093,FL,18,1000,0.3146',
      foundAt: '0.3737',
    },
  ],
  follows: () => [],
  ofFamily: ({ base }, family) => findingsInSheets(base, family, (sheet) => sheetFindings(base, sheet)),
  conclude: (found) => found.flat(),
});

function sheetFindings(base: Base, sheet: ProfileSheet): RuleFinding[] {
  return sheet.series.flatMap((all) => {
    const series = legibleOf(all, sheet).filter((cell) => (cell.thdPercent ?? 0) <= cleanThdPercent);
    if (series.length < leastSeries) return [];
    if (series.every((cell, at) => at === 0 || cell.volts > (series[at - 1]?.volts ?? 0))) return [];
    const increments = series.slice(1).map((cell, at) => dbv(cell.volts / (series[at]?.volts ?? cell.volts)));
    const jumps = jumpsOf(series);
    return increments.flatMap((rise, at): RuleFinding[] => {
      const usual = rise - (jumps[at] ?? 0);
      // Most steps rise by more than they can be misread by.
      if (usual < leastRiseDb || rise > 0) return [];
      if (rise === 0) return copiedFinding(base, sheet, series, jumps, at, usual);
      return exchangedFinding(base, sheet, series, at, usual);
    });
  });
}

const leastSeries = 6;
/** A step that rises less than this may read the same twice by chance, dB. */
const leastRiseDb = 0.4;
/** How even a series is but for the mistake, dB. */
const evenDb = 0.3;

/** Rows `at` and the next read the same: the one the steps beside it contradict was copied. */
function copiedFinding(
  base: Base,
  sheet: ProfileSheet,
  series: readonly Cell[],
  jumps: readonly number[],
  at: number,
  usual: number,
): RuleFinding[] {
  const [above, below] = [series[at], series[at + 1]];
  if (!above || !below || digitsOf(above.volts) < 3) return [];
  const made = (jump: number | undefined): boolean => jump !== undefined && Math.abs(jump - usual) <= evenDb;
  // What the copied row lacks, the step after it (or before the row above it) has to make up.
  const copied = made(jumps[at + 1]) ? below : made(jumps[at - 1]) ? above : undefined;
  const other = copied === below ? above : below;
  if (!copied) return [];
  return [
    {
      ...findingAt(base, sheet, copied, other),
      message: `${nameOf(sheet, copied)}: ${volts(copied)}, to the last digit what step ${other.step} reads, while the steps beside them rise by ${formatNumber(usual, 1)}\u00a0dB each: a copied row?`,
      claims: copied.readings.map(({ id }) => id),
    },
  ];
}

function exchangedFinding(
  base: Base,
  sheet: ProfileSheet,
  series: readonly Cell[],
  at: number,
  usual: number,
): RuleFinding[] {
  const [first, second] = [series[at], series[at + 1]];
  const [before, after] = [series[at - 1], series[at + 2]];
  if (!first || !second || !before || !after) return [];
  const rises = [
    dbv(second.volts / before.volts),
    dbv(first.volts / second.volts),
    dbv(after.volts / first.volts),
  ];
  const steps = [first.step - before.step, second.step - first.step, after.step - second.step];
  const most = evenDb + 9 * toleranceOf(second, sheet, 'own');
  if (first.readings.length !== second.readings.length) return [];
  if (rises.some((rise, index) => Math.abs(rise - (usual / (steps[1] ?? 1)) * (steps[index] ?? 1)) > most)) {
    return [];
  }
  return [
    {
      ...findingAt(base, sheet, first, second),
      message: `${nameOf(sheet, first)}: ${volts(first)}, and step ${second.step} reads less, ${volts(second)}; the other way round all steps rise evenly: two rows exchanged?`,
      claims: [...first.readings, ...second.readings].map(({ id }) => id),
    },
  ];
}

function findingAt(base: Base, sheet: ProfileSheet, cell: Cell, other: Cell): Omit<RuleFinding, 'message'> {
  const table = base.readings.get(sheet.session.id);
  const [reading, its] = [cell.readings[0], other.readings[0]];
  if (!table || !reading || !its) throw new Error(`no readings of session ${sheet.session.id}`);
  return {
    rule: 'misplaced-row',
    severity: 'error',
    place: table.place(reading.id, 'voltsRms'),
    help: 'Compare both rows with the original sheet; if the number is lost, take the row out or read the step again.',
    related: [{ place: table.place(its.id, 'voltsRms'), message: 'The other row.' }],
  };
}

function nameOf(sheet: ProfileSheet, { channel, step, hz }: Cell): string {
  return `“${sheet.profile}”, ${channel}, step ${step}, ${formatHz(hz)}`;
}

function volts(cell: Cell): string {
  return `${cell.volts} V`;
}

/** Significant digits a number is written with, as far as the number tells. */
function digitsOf(value: number): number {
  return String(value).replace('.', '').replace(/^0+/, '').length;
}
