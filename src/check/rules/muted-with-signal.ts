import type { Base } from '../../base/index.ts';
import { formatHz, formatNumber, mutedBelowDb, ratioDb } from '../../measure/index.ts';
import { type Cell, cellKey, type ProfileSheet } from '../readings/cells.ts';
import { findingsInSheets } from '../readings/sheets.ts';
import { leastPlayed } from '../readings/slip.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const mutedWithSignal = outputRule<RuleFinding[]>({
  id: 'muted-with-signal',
  title: 'An output that is silent is silent throughout.',
  explanation:
    'Some profiles switch the rear outputs off: they read noise at every step and frequency. One row with a signal among silent ones was most likely read at the front, or copied from a row of it. A row counts where the output is silent in all rows beside it, the next steps at its frequency and the next frequencies at its step, while the front plays there.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a front reading entered under a silent rear output',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'moorlight/kn-2093,RL,14,1000,0.1869,0.080,1\n',
      bad: 'moorlight/kn-2093,RL,12,1000,0.0008,,1\nmoorlight/kn-2093,RL,13,1000,0.1575,0.080,1\nmoorlight/kn-2093,RL,14,1000,0.0008,,1\n',
      foundAt: '0.1575',
    },
  ],
  follows: () => [],
  ofFamily: ({ base }, family) => findingsInSheets(base, family, (sheet) => sheetFindings(base, sheet)),
  conclude: (found) => found.flat(),
});

function sheetFindings(base: Base, sheet: ProfileSheet): RuleFinding[] {
  if (!sheet.cells.some((cell) => isSilent(sheet, cell))) return [];
  return sheet.cells.flatMap((cell) => {
    if (!plays(sheet, cell)) return [];
    const beside = cellsBeside(sheet, cell);
    if (beside.length === 0 || !beside.every((one) => isSilent(sheet, one))) return [];
    return findingAt(base, sheet, cell, beside[0]);
  });
}

/** The next cells of the same output: by step at the same frequency, by frequency at the same step. */
function cellsBeside(sheet: ProfileSheet, cell: Cell): Cell[] {
  const ofOutput = sheet.cells.filter((one) => one.channel === cell.channel && one !== cell);
  const next = (line: Cell[], place: (one: Cell) => number): (Cell | undefined)[] => {
    const sorted = line.sort((a, b) => place(a) - place(b));
    return [
      sorted.findLast((one) => place(one) < place(cell)),
      sorted.find((one) => place(one) > place(cell)),
    ];
  };
  return [
    ...next(
      ofOutput.filter(({ hz }) => hz === cell.hz),
      ({ step }) => step,
    ),
    ...next(
      ofOutput.filter(({ step }) => step === cell.step),
      ({ hz }) => hz,
    ),
  ].filter((one) => one !== undefined);
}

/** An output’s volts over those of front left, dB; undefined where that one does not play well above its noise. */
function toFrontDb(sheet: ProfileSheet, cell: Cell): number | undefined {
  const front = sheet.byKey.get(cellKey('FL', cell.step, cell.hz));
  if (cell.channel === 'FL' || !front || front.volts < 10 * leastPlayed) return undefined;
  return cell.volts === 0 ? Number.NEGATIVE_INFINITY : ratioDb(cell.volts / front.volts);
}

function isSilent(sheet: ProfileSheet, cell: Cell): boolean {
  return (toFrontDb(sheet, cell) ?? 0) < mutedBelowDb;
}

/** Whether a cell is nearer to front left than to silence. */
function plays(sheet: ProfileSheet, cell: Cell): boolean {
  return (toFrontDb(sheet, cell) ?? Number.NEGATIVE_INFINITY) > mutedBelowDb / 2;
}

function findingAt(base: Base, sheet: ProfileSheet, cell: Cell, silent: Cell | undefined): RuleFinding[] {
  const table = base.readings.get(sheet.session.id);
  const [reading, its] = [cell.readings[0], silent?.readings[0]];
  if (!table || !reading || !silent || !its) return [];
  const difference = formatNumber(Math.abs(toFrontDb(sheet, silent) ?? 0), 0);
  return [
    {
      rule: 'muted-with-signal',
      severity: 'error',
      place: table.place(reading.id, 'voltsRms'),
      message: `“${sheet.profile}”, ${cell.channel}, step ${cell.step}, ${formatHz(cell.hz)}: ${cell.volts} V, while the rows beside it find this output silent${Number.isFinite(toFrontDb(sheet, silent) ?? 0) ? `, ${difference}\u00a0dB below the front` : ''}.`,
      help: 'Compare the row with the original sheet: was it read at the front output, or copied from a row of it?',
      related: [{ place: table.place(its.id, 'voltsRms'), message: 'A row beside it.' }],
      claims: cell.readings.map(({ id }) => id),
    },
  ];
}
