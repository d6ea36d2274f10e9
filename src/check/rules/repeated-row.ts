import { channels } from '../../../schemas/index.ts';
import type { BenchReading, ReadingTable } from '../../base/index.ts';
import { formatHz, formatNumber } from '../../measure/index.ts';
import type { Rule, RuleFinding } from '../rule.ts';

export const repeatedRow: Rule = {
  id: 'repeated-row',
  title: 'The repeats of a reading are counted 1, 2, 3, each once and none left out.',
  explanation:
    'Repeats of a reading are counted: 1, 2, 3. Two rows with the same count are one reading entered twice, or two readings of which one belongs to another step, frequency or profile; whichever it is, both would be averaged as if they were independent. A count that leaves numbers out tells of rows that are lost, or of a step and a repeat exchanged.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a repeat that was not counted on',
      file: 'outputs/2025-05-shed/readings.csv',
      good: '2\nmoorlight/km-4417,FL,20,1000,3.1609',
      bad: '1\nmoorlight/km-4417,FL,20,1000,3.1609',
    },
  ],
  check: ({ answers: { base }, readerFindings, remember }) => {
    // Rows that could not be read, or belong to another profile, leave gaps in the counts.
    const faulty = new Set(readerFindings.map(({ place }) => place.file));
    return [...base.readings.values()].flatMap((table) => {
      const isWhole = !faulty.has(table.source.file);
      return remember(['repeated-row', table.session, table.digest, String(isWhole)], () =>
        sheetFindings(table, isWhole),
      );
    });
  },
};

function sheetFindings(table: ReadingTable, isWhole: boolean): RuleFinding[] {
  const findings: RuleFinding[] = [];
  for (const profile of table.profiles) {
    const firstOf = new Map<number, BenchReading[]>();
    const already = findings.length;
    for (const reading of table.readingsOf(profile)) {
      const key = pointKey(reading);
      const before = firstOf.get(key);
      if (!before) {
        firstOf.set(key, [reading]);
        continue;
      }
      const first = before.find((one) => one.repeat === reading.repeat);
      if (first) findings.push(repeated(table, first, reading));
      else before.push(reading);
    }
    // A row counted twice leaves a gap as well: that is its echo.
    if (!isWhole || findings.length > already) continue;
    for (const readings of firstOf.values()) findings.push(...miscounted(table, readings));
  }
  return findings;
}

/** Repeats that leave numbers out: with n of them, one is numbered above n. */
function miscounted(table: ReadingTable, readings: readonly BenchReading[]): RuleFinding[] {
  const most = readings.reduce((best, one) => (one.repeat > best.repeat ? one : best));
  if (most.repeat <= readings.length) return [];
  const { profile, channel, step, hz, repeat } = most;
  return [
    {
      rule: 'repeated-row',
      severity: 'error',
      place: table.place(most.id, 'repeat'),
      message: `Repeat ${repeat} of ${profile}, ${channel}, step ${step}, ${formatHz(hz)} stands here, and there ${readings.length === 1 ? 'is only this one' : `are only ${readings.length}`}.`,
      help: 'Number the repeats 1, 2, 3 without leaving any out; if step and repeat are exchanged, put them right.',
      related: [],
    },
  ];
}

/** Channel, step and frequency in one number: frequencies stay below 2^18 Hz and keep 25 bits of fraction. */
function pointKey({ channel, step, hz }: BenchReading): number {
  return (channels.indexOf(channel) * 256 + step) * 2 ** 18 + hz;
}

function repeated(table: ReadingTable, first: BenchReading, reading: BenchReading): RuleFinding {
  const { profile, channel, step, hz, repeat } = reading;
  const same = first.voltsRms === reading.voltsRms && first.thdPercent === reading.thdPercent;
  return {
    rule: 'repeated-row',
    severity: 'error',
    place: table.place(reading.id, 'repeat'),
    message: same
      ? `This row stands in the sheet twice (${profile}, ${channel}, step ${step}, ${formatHz(hz)}).`
      : `A second row for ${profile}, ${channel}, step ${step}, ${formatHz(hz)}, repeat ${repeat}: ${formatNumber(reading.voltsRms, 4)} V here, ${formatNumber(first.voltsRms, 4)} V before.`,
    help: same
      ? 'Delete one of the two.'
      : 'If it is another repeat, count it on; else correct the step, the frequency or the profile of one of them.',
    related: [{ place: table.place(first.id), message: 'The first row.' }],
    // Of two rows that differ nothing shows which one is right.
    claims: same ? [reading.id] : [first.id, reading.id],
  };
}
