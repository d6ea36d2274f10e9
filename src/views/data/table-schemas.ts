/** The columns of the published data, as Table Schemas (Data Package standard, version 2.0). */
import { channels, characteristicNames, sourceKinds } from '../../../schemas/index.ts';
import { verdicts } from '../../decide/index.ts';

/** A column. `unit` is a property of our own, which the standard allows. */
export interface Field {
  readonly name: string;
  readonly type: 'string' | 'number' | 'integer' | 'boolean' | 'date';
  readonly description: string;
  readonly unit?: string;
  readonly constraints?: {
    readonly required?: true;
    readonly unique?: true;
    readonly enum?: readonly string[];
    readonly minimum?: number;
  };
}

export interface TableSchema {
  readonly fields: readonly Field[];
  readonly primaryKey: readonly string[];
  readonly foreignKeys?: readonly {
    readonly fields: readonly string[];
    readonly reference: { readonly resource: string; readonly fields: readonly string[] };
  }[];
}

const required = { required: true } as const;
const to = (field: string, resource: string) => ({
  fields: [field],
  reference: { resource, fields: ['id'] },
});
const text = (name: string, description: string): Field => ({ name, type: 'string', description });
const named = (name: string, description: string): Field => ({
  ...text(name, description),
  constraints: required,
});
const number = (name: string, unit: string, description: string): Field => ({
  name,
  type: 'number',
  unit,
  description,
});
const choice = (name: string, values: readonly string[], description: string): Field => ({
  ...text(name, description),
  constraints: { required: true, enum: values },
});
const day = (name: string, description: string): Field => ({
  name,
  type: 'date',
  description,
  constraints: required,
});

const loadSupplySignal = [
  number('loadOhms', 'Ω', 'Load per channel.'),
  number('supplyVolts', 'V', 'Supply at the terminals, DC.'),
  number('signalDbfs', 'dB', 'Level of the test signal, relative to a full-scale sine (AES17).'),
];

export const tableSchemas = {
  units: {
    fields: [
      named('id', 'Family id.'),
      named('name', 'The name riders and shop use.'),
      named('maker', 'Maker of the motorcycles it is fitted to.'),
      text('outputs', 'Its speaker outputs, separated by spaces: FL, FR, RL, RR.'),
      text('topology', 'bridged or ground-referenced.'),
      number('ratedLoadOhms', 'Ω', 'Rated load per channel.'),
      { name: 'lowestStep', type: 'integer', unit: 'step', description: 'Lowest volume step.' },
      { name: 'highestStep', type: 'integer', unit: 'step', description: 'Highest volume step.' },
    ],
    primaryKey: ['id'],
  },
  profiles: {
    fields: [
      named('id', 'Profile id: family/slug.'),
      named('family', 'Family id.'),
      named('code', 'The code exactly as the screen shows it.'),
      choice('origin', ['factory', 'dealer-update', 'third-party'], 'Who put it there.'),
      choice('system', ['amplified', 'unamplified'], 'Whether a factory amplifier follows the unit.'),
      text('sources', 'Ids of its sources, separated by spaces.'),
    ],
    primaryKey: ['id'],
    foreignKeys: [to('family', 'units')],
  },
  characteristics: {
    fields: [
      named('id', 'Profile id, #, and the name of its row on the page of the profile.'),
      named('profile', 'Profile id.'),
      choice('name', characteristicNames, 'What it is.'),
      {
        name: 'headline',
        type: 'boolean',
        description: 'Whether it is the first value of its name; the others are under other conditions.',
        constraints: required,
      },
      { name: 'value', type: 'number', description: 'In the unit of its row.', constraints: required },
      named('unit', 'Unit of value and uncertainty.'),
      {
        name: 'expandedUncertainty',
        type: 'number',
        description: 'U for 95 % coverage (GUM), in the unit of the row; 0 for counts and bounds.',
        constraints: { required: true, minimum: 0 },
      },
      {
        name: 'coverageFactor',
        type: 'number',
        description: 'k, by which the standard uncertainty is multiplied.',
      },
      choice('bound', ['exact', 'at-most', 'at-least'], 'Whether the value is meant as it stands.'),
      text('channel', 'Output it was read at; empty where it is of none alone.'),
      { name: 'step', type: 'number', unit: 'step', description: 'Volume step, where it holds at one.' },
      number('hz', 'Hz', 'Frequency, where it holds at one.'),
      ...loadSupplySignal,
      { name: 'readings', type: 'integer', description: 'How many readings it was computed from.' },
      text('sources', 'Ids of their sources, separated by spaces.'),
    ],
    primaryKey: ['id'],
    foreignKeys: [to('profile', 'profiles')],
  },
  answers: {
    fields: [
      named('profile', 'Profile id.'),
      named('plan', 'Plan id.'),
      choice('verdict', verdicts, 'What to do.'),
      text('sentence', 'The answer in one sentence.'),
    ],
    primaryKey: ['profile', 'plan'],
    foreignKeys: [to('profile', 'profiles')],
  },
  sessions: {
    fields: [
      named('id', 'Session id.'),
      day('date', 'The day the readings were taken.'),
      named('source', 'Source id it is cited as.'),
      named('bench', 'Which bench.'),
      named('takenBy', 'Who took the readings, by role.'),
      named('instrument', 'What the voltmeter is.'),
      number('resolutionVolts', 'V', 'One count of the last digit.'),
      named('signal', 'What was played.'),
      ...loadSupplySignal,
      number('signalToleranceDb', 'dB', 'Limit of error of the signal (±).'),
      number('loadTolerancePercent', '%', 'Limit of error of the load (±).'),
      number('supplyToleranceVolts', 'V', 'Limit of error of the supply (±).'),
      named('method', 'How it was done.'),
    ],
    primaryKey: ['id'],
    foreignKeys: [to('source', 'sources')],
  },
  sources: {
    fields: [
      named('id', 'Source id.'),
      choice('kind', sourceKinds, 'What kind of source.'),
      named('title', 'Its title.'),
      day('date', 'The day it was made or published.'),
      named('keptAt', 'Where the original can be seen.'),
      choice('trust', ['high', 'medium', 'low'], 'How far to trust it.'),
      named('trustReason', 'Why.'),
    ],
    primaryKey: ['id'],
  },
  readings: {
    fields: [
      {
        name: 'id',
        type: 'string',
        description: 'Reading id: session, colon, line of the sheet it was written in.',
        constraints: { required: true, unique: true },
      },
      named('session', 'Session id.'),
      named('profile', 'Profile id the unit was set to.'),
      choice('channel', channels, 'The output read.'),
      {
        name: 'step',
        type: 'integer',
        unit: 'step',
        description: 'Volume step.',
        constraints: { required: true, minimum: 0 },
      },
      { ...number('hz', 'Hz', 'Frequency of the test tone.'), constraints: required },
      { ...number('voltsRms', 'V', 'Reading, rms.'), constraints: { required: true, minimum: 0 } },
      number('thdPercent', '%', 'Total harmonic distortion, of the fundamental; empty where not read.'),
      { name: 'repeat', type: 'integer', description: 'Number of the repeat.', constraints: required },
      {
        name: 'counts',
        type: 'boolean',
        description: 'false for readings set aside: kept, but not used for any value.',
        constraints: required,
      },
    ],
    primaryKey: ['id'],
    foreignKeys: [to('session', 'sessions'), to('profile', 'profiles')],
  },
} as const satisfies Record<string, TableSchema>;

/** A table schema as its readers have it, whichever it is. */
export function columnsOf(schema: TableSchema): string[] {
  return schema.fields.map(({ name }) => name);
}
