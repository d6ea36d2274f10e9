import type { Base, BenchReading } from '../../base/index.ts';
import { formatHz, formatNumber, ratioDb } from '../../measure/index.ts';
import { type Cell, median, type ProfileSheet, toleranceOf } from '../readings/cells.ts';
import { findingsInSheets } from '../readings/sheets.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const repeatsDisagree = outputRule<RuleFinding[]>({
  id: 'repeats-disagree',
  title: 'Repeats of one reading agree.',
  explanation:
    'The same output, step and frequency read again in the same session with nothing changed gives the same volts but for the last digits. A repeat that is off the others by more than ten times what the voltmeter scatters was written down wrongly or read with something else set. Left in, it would not show as a wrong value but as a wide uncertainty of the whole session, under which true contradictions hide.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'two digits of a repeat exchanged',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,20,1000,0.5279,0.080,2',
      bad: 'kn-2093,FL,20,1000,0.5729,0.080,2',
      foundAt: '0.5729',
    },
  ],
  follows: () => [],
  ofFamily: ({ base }, family) =>
    findingsInSheets(base, family, (sheet) =>
      sheet.cells
        .filter(({ readings }) => readings.length > 1)
        .flatMap((cell) => cellFindings(base, sheet, cell)),
    ),
  conclude: (found) => found.flat(),
});

/** Repeats nearer than this to each other may be scatter of a poor contact, relative: common practice, no source. */
const leastApart = 0.05;
const timesScatter = 10;

function cellFindings(base: Base, sheet: ProfileSheet, cell: Cell): RuleFinding[] {
  const expected = expectedVolts(cell);
  const most = Math.max(leastApart, timesScatter * toleranceOf(cell, sheet, 'own', expected));
  const off = cell.readings.filter((one) => offBy(one, expected) > most);
  // If most of them are off, none can be told to be right.
  if (off.length * 2 > cell.readings.length) return [];
  return off.flatMap((reading) => findingAt(base, sheet, cell, reading));
}

/** What the repeats of a cell read for the most part, volts: their median, of two the first. */
function expectedVolts({ readings }: Cell): number {
  const volts = readings.map((one) => one.voltsRms);
  return (readings.length === 2 ? volts[0] : median(volts)) ?? Number.NaN;
}

/** How far a reading is off what is expected, relative to the greater of the two. */
function offBy({ voltsRms }: BenchReading, expected: number): number {
  const most = Math.max(voltsRms, expected);
  return most === 0 ? 0 : Math.abs(voltsRms - expected) / most;
}

function findingAt(base: Base, sheet: ProfileSheet, cell: Cell, reading: BenchReading): RuleFinding[] {
  const table = base.readings.get(sheet.session.id);
  const other = cell.readings.find((one) => one !== reading);
  if (!table || !other) return [];
  const expected = expectedVolts(cell);
  const slipped = [10, 100].find((factor) =>
    [reading.voltsRms / expected, expected / reading.voltsRms].some(
      (ratio) => Math.abs(ratio / factor - 1) < 0.05,
    ),
  );
  const apart =
    reading.voltsRms === 0 || expected === 0
      ? ''
      : `, ${formatNumber(Math.abs(ratioDb(reading.voltsRms / expected)), 1)}\u00a0dB apart`;
  return [
    {
      rule: 'repeats-disagree',
      severity: 'error',
      place: table.place(reading.id, 'voltsRms'),
      message: `“${sheet.profile}”, ${cell.channel}, step ${cell.step}, ${formatHz(cell.hz)}: repeat ${reading.repeat} reads ${reading.voltsRms} V, ${cell.readings.length === 2 ? `repeat ${other.repeat}` : 'the others'} ${formatNumber(expected, 4)} V${apart}.${slipped ? ' A slipped decimal point?' : ''}`,
      help: 'Compare the rows with the original sheet. A repeat that was read wrongly is taken out, or set aside in session.yaml with its reason.',
      related: [{ place: table.place(other.id, 'voltsRms'), message: 'A repeat of the same reading.' }],
      claims: (cell.readings.length === 2 ? cell.readings : [reading]).map(({ id }) => id),
    },
  ];
}
