/** Slips of unit put into simulated sheets on purpose, and whether the check names them. */
import { checkContent } from '../../src/check/index.ts';
import { type RandomStream, randomStream } from '../../src/demo/random.ts';
import { type Sheet, type SheetRow, simulatedBase } from './simulated-sheets.ts';

export interface SlipTally {
  bases: number;
  /** What was not as it should be, in words, one a base. */
  readonly wrong: string[];
  readonly byKind: Map<string, { put: number; named: number }>;
}

/** Checks good simulated bases; any finding but news is wrong. */
export async function tallyGood(seed: number, bases: number): Promise<SlipTally> {
  const tally: SlipTally = { bases, wrong: [], byKind: new Map() };
  for (let base = 0; base < bases; base += 1) {
    const { files } = simulatedBase(seed, `good ${base}`, 1 + (base % 3));
    const { findings } = await checkContent(files());
    const loud = findings.filter((one) => one.severity !== 'note');
    if (loud.length > 0) {
      tally.wrong.push(
        `${base}: ${loud.map((one) => `${one.rule} ${one.place.line} ${one.message}`).join(' | ')}`,
      );
    }
  }
  return tally;
}

interface SlipOnPurpose {
  readonly cause: string;
  readonly write: (row: SheetRow) => Partial<SheetRow>;
  /** Rows it can be made in and told. */
  readonly shows: (row: SheetRow) => boolean;
}

const isRead = (row: SheetRow): boolean => row.voltsRms > 0.1;
const byFactor = (cause: string, factor: number): SlipOnPurpose => ({
  cause,
  write: ({ voltsRms }) => ({ voltsRms: Number((voltsRms * factor).toFixed(7)) }),
  shows: isRead,
});
const decibels = (cause: string, reference: number): SlipOnPurpose => ({
  cause,
  write: ({ voltsRms }) => ({ voltsRms: Number((20 * Math.log10(voltsRms / reference)).toFixed(3)) }),
  // Between these volts and decibels are nearly the same number, below them decibels are negative.
  shows: ({ voltsRms }) => voltsRms > 2.2,
});
export const slips: Readonly<Record<string, SlipOnPurpose>> = {
  'millivolts for volts': byFactor('millivolts written for volts', 1000),
  'a thousandth': { ...byFactor('volts divided by 1000', 0.001), shows: ({ voltsRms }) => voltsRms > 1 },
  'peak for rms': byFactor('peak volts written for rms', Math.SQRT2),
  'peak-to-peak for rms': byFactor('peak-to-peak volts written for rms', 2 * Math.SQRT2),
  'divided by √2': byFactor('divided by √2', Math.SQRT1_2),
  'divided by 2√2': byFactor('divided by 2√2', Math.SQRT1_2 / 2),
  dBV: decibels('decibels over 1 V', 1),
  dBu: decibels('decibels over 0.775 V', Math.sqrt(0.6)),
  'THD as a ratio': {
    cause: 'a ratio written for per cent',
    write: ({ thdPercent }) => ({
      thdPercent: thdPercent === null ? null : Number((thdPercent / 100).toFixed(5)),
    }),
    shows: ({ thdPercent }) => thdPercent !== null,
  },
};

/** Which rows of a sheet a slip is put into. */
type Reach = 'a row' | 'a run' | 'an output' | 'a profile' | 'a session';

/**
 * Puts one slip into each of many simulated bases and holds the check to naming it: once, at its first row,
 * with its cause, and nothing else.
 */
export async function tallyBad(seed: number, bases: number): Promise<SlipTally> {
  const tally: SlipTally = { bases, wrong: [], byKind: new Map() };
  const names = Object.keys(slips);
  for (let base = 0; base < bases; base += 1) {
    const name = names[base % names.length] ?? '';
    const random = randomStream(seed, `slip ${base}`);
    const sessions = 1 + Math.floor(random.uniform(0, 3));
    const { sheets, files } = simulatedBase(seed, `bad ${base}`, sessions);
    const reach = reachFor(name, sessions, random);
    const sheet = sheets[Math.floor(random.uniform(0, sessions))];
    const slip = slips[name];
    if (!sheet || !slip) throw new Error('no sheet');
    const line = putIn(sheet, slip, reach, random);
    const findings = (await checkContent(files())).findings.filter((one) => one.severity !== 'note');
    const shown = findings.map((one) => `${one.rule} ${one.place.file}:${one.place.line} ${one.message}`);
    const [only] = findings;
    const isNamed =
      findings.length === 1 &&
      only?.rule === 'unit-slip' &&
      only.place.file === `outputs/${sheet.session}/readings.csv` &&
      only.place.line === line &&
      only.message.includes(slip.cause);
    const kind = `${name}, ${reach}, ${sessions === 1 ? 'one session' : `${sessions} sessions`}`;
    const count = tally.byKind.get(kind) ?? { put: 0, named: 0 };
    tally.byKind.set(kind, { put: count.put + 1, named: count.named + Number(isNamed) });
    if (!isNamed) {
      tally.wrong.push(`${base}: ${kind} at ${sheet.session}:${line}: ${shown.join(' | ') || 'nothing'}`);
    }
  }
  return tally;
}

/** A reach that the data can show: what all of a sheet shares needs another session to tell it by. */
function reachFor(name: string, sessions: number, random: RandomStream): Reach {
  const alone: readonly Reach[] = ['a row', 'a run'];
  const told: readonly Reach[] = ['a row', 'a run', 'an output', 'a profile', 'a session'];
  const upwards = !name.startsWith('divided');
  const reaches =
    name === 'THD as a ratio'
      ? (['a row', 'a profile'] as const)
      : sessions === 1 || (sessions === 2 && !upwards)
        ? alone
        : told;
  return reaches[Math.floor(random.uniform(0, reaches.length))] ?? 'a row';
}

/** Writes the slip into the sheet and gives the line of the first row it is in. */
function putIn(sheet: Sheet, slip: SlipOnPurpose, reach: Reach, random: RandomStream): number {
  const of = <T>(list: readonly T[]): T => {
    const one = list[Math.floor(random.uniform(0, list.length))];
    if (one === undefined) throw new Error('nothing to choose from');
    return one;
  };
  const inSteps = (row: SheetRow): boolean =>
    row.channel === 'FL' && row.hz === 1000 && row.step >= 5 && row.step <= 27;
  const chosen = sheet.rows.filter(
    (row) => slip.shows(row) && (reach === 'an output' || reach === 'a session' || inSteps(row)),
  );
  const first = of(chosen);
  // It comes back to volts before the last step: a jump that stays may be the unit’s own.
  const until = Math.min(28, first.step + 1 + Math.floor(random.uniform(1, 5)));
  const isIn = (row: SheetRow): boolean => {
    if (reach === 'a run') {
      return row.profile === first.profile && inSteps(row) && row.step >= first.step && row.step <= until;
    }
    if (!slip.shows(row)) return false;
    if (reach === 'a session') return true;
    if (row.profile !== first.profile) return false;
    if (reach === 'a profile') return true;
    if (row.channel !== first.channel) return false;
    if (reach === 'an output') return true;
    if (row.hz !== first.hz) return false;
    return row.step === first.step && row.repeat === first.repeat;
  };
  let line = 0;
  sheet.rows = sheet.rows.map((row, index) => {
    if (!isIn(row)) return row;
    if (line === 0) line = index + 2;
    return { ...row, ...slip.write(row) };
  });
  return line;
}
