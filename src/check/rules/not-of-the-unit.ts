import type { Base, BenchReading, Entry, ReadingTable, RelatedPlace } from '../../base/index.ts';
import { type RuleFinding, sheetRule } from '../rule.ts';

export const notOfTheUnit = sheetRule({
  id: 'not-of-the-unit',
  title: 'Every reading is of an output and a volume step the unit has.',
  explanation:
    'A row that names an output or a volume step its unit does not have was typed wrongly: a nought too many, two columns exchanged, a row of another unit. The outputs and the steps are those of the family.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a nought too many',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,13,1000,0.1576',
      bad: 'kn-2093,FL,130,1000,0.1576',
      foundAt: '130',
    },
  ],
  ofSheet: sheetFindings,
});

/** One finding for each unit and what is wrong with its rows: if the family is at fault, all of them are. */
function sheetFindings(base: Base, _: Entry<'outputs'>, table: ReadingTable): RuleFinding[] {
  const faulty = new Map<string, { readonly fault: Fault; readonly readings: BenchReading[] }>();
  for (const profile of table.profiles) {
    const family = base.families.get(base.profiles.get(profile)?.data.family ?? '');
    if (!family) continue;
    for (const reading of table.readingsOf(profile)) {
      const fault = faultOf(reading, family);
      if (!fault) continue;
      const key = `${family.id} ${fault.column}`;
      const known = faulty.get(key);
      if (known) known.readings.push(reading);
      else faulty.set(key, { fault, readings: [reading] });
    }
  }
  return [...faulty.values()].map(({ fault, readings }) => findingOf(table, fault, readings));
}

interface Fault {
  readonly column: 'channel' | 'step';
  readonly message: string;
  readonly help: string;
  readonly because: RelatedPlace;
}

function findingOf(table: ReadingTable, fault: Fault, readings: readonly BenchReading[]): RuleFinding {
  const { column, message, help, because } = fault;
  const count = readings.length === 1 ? '' : ` It is the first of ${readings.length} such rows.`;
  return {
    rule: 'not-of-the-unit',
    severity: 'error',
    place: table.place(readings[0]?.id ?? '', column),
    message: `${message}${count}`,
    help,
    related: [because],
    claims: readings.map(({ id }) => id),
  };
}

function faultOf({ channel, step }: BenchReading, family: Entry<'families'>): Fault | undefined {
  const { output, volume, name } = family.data;
  if (!output.channels.includes(channel)) {
    return {
      column: 'channel',
      message: `The unit “${name}” has no output ${channel}.`,
      help: `Its outputs are: ${output.channels.join(', ')}. Correct the row, or the unit if it has this one too.`,
      because: { place: family.place(['output', 'channels'], 'key'), message: 'Its outputs stand here.' },
    };
  }
  // Steps the wrong way round are the family’s fault, not that of every row.
  const isSound = volume.lowestStep <= volume.highestStep;
  if (isSound && (step < volume.lowestStep || step > volume.highestStep)) {
    return {
      column: 'step',
      message: `Step ${step} is none of the unit “${name}”.`,
      help: `Its volume steps go from ${volume.lowestStep} to ${volume.highestStep}. Correct the row, or the unit if it has more.`,
      because: { place: family.place(['volume'], 'key'), message: 'Its steps stand here.' },
    };
  }
  return undefined;
}
