/** The readings wanted most as sheets to fill in: one a load, for paper and as CSV. */
import { type CautionId, readingColumns } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';
import { nominalOf } from '../../measure/index.ts';
import { type CautionText, cautionTexts } from '../cautions.ts';
import { profilePath } from '../paths.ts';
import { plainNumber } from '../wording.ts';
import type { Wanted } from './wanted.ts';
import { type WantedReading, wantedReadings } from './wanted-readings.ts';

export interface BenchSheetView {
  /** For addresses: `4-ohm`. */
  readonly id: string;
  /** “4 Ω”. */
  readonly load: string;
  readonly count: number;
  readonly blocks: readonly SheetBlock[];
  readonly cautions: readonly CautionText[];
  /** The same rows as a sheet of readings, volts and THD left empty. */
  readonly csv: string;
}

/** The readings of one output of one profile at one step. */
export interface SheetBlock {
  readonly profile: string;
  readonly code: string;
  readonly unit: string;
  readonly path: string;
  readonly channel: string;
  readonly step: number;
  readonly rows: readonly SheetRow[];
}

export interface SheetRow {
  /** As sheets have it. */
  readonly hz: number;
  /** As it is printed on instruments, where that differs: 63 for 63.0957. */
  readonly nominalHz: number | undefined;
  readonly repeats: number;
}

/** Heeded while readings are taken, whatever the unit’s own entry says. */
export const benchCautions: readonly CautionId[] = [
  'bridged-outputs',
  'hearing',
  'engine-off-indoors',
  'battery-drain',
];

/** One sheet for each load the readings are to be taken into; none where nothing is wanted. */
export function benchSheets(answers: Answers, wanted: readonly Wanted[]): BenchSheetView[] {
  const readings = wantedReadings(answers, wanted);
  return [...new Set(readings.map(({ loadOhms }) => loadOhms))].map((ohms) => {
    const own = readings.filter(({ loadOhms }) => loadOhms === ohms);
    return {
      id: `${String(ohms).replace('.', '-')}-ohm`,
      load: `${plainNumber(ohms)}\u00a0Ω`,
      count: own.length,
      blocks: blocksOf(answers, own),
      cautions: cautionTexts(benchCautions),
      csv: csvOf(own),
    };
  });
}

function blocksOf({ base }: Answers, readings: readonly WantedReading[]): SheetBlock[] {
  const blocks = new Map<string, SheetBlock & { rows: SheetRow[] }>();
  for (const { profile, channel, step, hz, repeat } of readings) {
    const entry = base.profiles.get(profile);
    const key = `${profile} ${channel} ${step}`;
    const block = blocks.get(key) ?? {
      profile,
      code: entry?.data.code ?? profile,
      unit: base.families.get(entry?.data.family ?? '')?.data.name ?? '',
      path: profilePath(profile),
      channel,
      step,
      rows: [],
    };
    blocks.set(key, block);
    const last = block.rows.at(-1);
    if (last?.hz === hz) {
      block.rows[block.rows.length - 1] = { ...last, repeats: Math.max(last.repeats, repeat) };
    } else {
      const nominal = nominalOf(hz);
      block.rows.push({ hz, nominalHz: nominal === hz ? undefined : nominal, repeats: repeat });
    }
  }
  return [...blocks.values()];
}

/** The rows with the columns of `outputs/<session>/readings.csv`. */
function csvOf(readings: readonly WantedReading[]): string {
  const lines = readings.map((reading) =>
    readingColumns
      .map((column) => (column === 'voltsRms' || column === 'thdPercent' ? '' : reading[column]))
      .join(','),
  );
  return [readingColumns.join(','), ...lines, ''].join('\n');
}
