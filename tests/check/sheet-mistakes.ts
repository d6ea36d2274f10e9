/** Mistakes other than slips of unit put into simulated sheets on purpose, and whether the check names them. */
import { checkContent } from '../../src/check/index.ts';
import { type RandomStream, randomStream } from '../../src/demo/random.ts';
import { highestStep, type Sheet, type SheetRow, simulatedBase } from './simulated-sheets.ts';

/** Where a mistake was put: the rule that is to name it, and the lines of the sheet any of which will do. */
interface Put {
  readonly rule: string;
  readonly lines: readonly number[];
  readonly file?: string;
}

interface Mistake {
  readonly sessions: readonly [least: number, most: number];
  /** Undefined where this sheet cannot show it. */
  readonly put: (sheet: Sheet, random: RandomStream) => Put | undefined;
}

const isScale = (row: SheetRow): boolean => row.channel === 'FL' && row.hz === 1000;
const lineOf = (index: number): number => index + 2;

/** The indices of single, legible and clean rows of the volume scale. */
function scaleRows(sheet: Sheet): number[] {
  return sheet.rows.flatMap((row, index) => {
    const isClean = (row.thdPercent ?? 100) < 0.5 && row.step > 3 && row.step < highestStep - 2;
    const isLegible = row.voltsRms > 300 * sheet.resolutionVolts;
    return isScale(row) && isClean && isLegible && row.step % 8 !== 4 ? [index] : [];
  });
}

function anyOf<T>(list: readonly T[], random: RandomStream): T | undefined {
  return list[Math.floor(random.uniform(0, list.length))];
}

function change(sheet: Sheet, index: number, changes: Partial<SheetRow>): void {
  sheet.rows = sheet.rows.map((row, at) => (at === index ? { ...row, ...changes } : row));
}

/** Two neighbouring scale rows of one profile, both clean, with clean rows around them. */
function neighbours(sheet: Sheet, random: RandomStream): [number, number] | undefined {
  const rows = scaleRows(sheet);
  const inside = rows.filter((index) => [-1, 1, 2].every((by) => rows.includes(index + by)));
  const first = anyOf(inside, random);
  return first === undefined ? undefined : [first, first + 1];
}

export const mistakes: Readonly<Record<string, Mistake>> = {
  'a row copied into the next': {
    sessions: [1, 1],
    put: (sheet, random) => {
      const [from, to] = neighbours(sheet, random) ?? [];
      if (from === undefined || to === undefined) return undefined;
      change(sheet, to, { voltsRms: sheet.rows[from]?.voltsRms ?? 0 });
      return { rule: 'misplaced-row', lines: [lineOf(from), lineOf(to)] };
    },
  },
  'two rows exchanged': {
    sessions: [1, 3],
    put: (sheet, random) => {
      const [one, other] = neighbours(sheet, random) ?? [];
      if (one === undefined || other === undefined) return undefined;
      const [first, second] = [sheet.rows[one]?.voltsRms ?? 0, sheet.rows[other]?.voltsRms ?? 0];
      change(sheet, one, { voltsRms: second });
      change(sheet, other, { voltsRms: first });
      return { rule: 'misplaced-row', lines: [lineOf(one), lineOf(other)] };
    },
  },
  'a decimal point to the left, one session': {
    sessions: [1, 1],
    put: (sheet, random) => {
      const index = anyOf(scaleRows(sheet), random);
      if (index === undefined) return undefined;
      change(sheet, index, { voltsRms: (sheet.rows[index]?.voltsRms ?? 0) / 10 });
      return { rule: 'level-falls', lines: [lineOf(index)] };
    },
  },
  'a decimal point to the left, several sessions': {
    sessions: [2, 3],
    put: (sheet, random) => {
      const index = anyOf(scaleRows(sheet), random);
      if (index === undefined) return undefined;
      change(sheet, index, { voltsRms: (sheet.rows[index]?.voltsRms ?? 0) / 10 });
      return { rule: 'sessions-disagree', lines: [lineOf(index)] };
    },
  },
  'front and rear exchanged': {
    sessions: [2, 3],
    put: (sheet) => {
      const profile = 'moorlight/km-4417';
      const at = (channel: string, step: number): SheetRow | undefined =>
        sheet.rows.find(
          (row) => row.profile === profile && row.channel === channel && row.step === step && row.hz === 1000,
        );
      const ratio = (at('FR', 16)?.voltsRms ?? 1) / (at('RR', 16)?.voltsRms || 1);
      // Rear as loud as front cannot be told from it, and a silent one is a matter of its own.
      if (ratio < 1.25 || ratio > 100) return undefined;
      const lines: number[] = [];
      sheet.rows = sheet.rows.map((row, index) => {
        if (row.profile !== profile || (row.channel !== 'FR' && row.channel !== 'RR')) return row;
        lines.push(lineOf(index));
        return { ...row, channel: row.channel === 'FR' ? 'RR' : 'FR' };
      });
      return { rule: 'mistaken-series', lines };
    },
  },
  'another profile set on the unit': {
    sessions: [2, 3],
    put: (sheet) => {
      const lines: number[] = [];
      const own = sheet.rows.filter((row) => row.profile === 'moorlight/kn-2093');
      let next = 0;
      sheet.rows = sheet.rows.map((row, index) => {
        if (row.profile !== 'moorlight/km-4417') return row;
        lines.push(lineOf(index));
        const read = own[next];
        next += 1;
        // Read again: the last digits differ.
        const voltsRms = Number(((read?.voltsRms ?? 0) * (1 + 0.0008 * ((index % 5) - 2))).toFixed(4));
        return { ...row, voltsRms, thdPercent: read?.thdPercent ?? null };
      });
      return { rule: 'mistaken-series', lines };
    },
  },
  'two profiles exchanged': {
    sessions: [2, 3],
    put: (sheet) => {
      const turned: Readonly<Record<string, string>> = {
        'moorlight/km-4417': 'moorlight/kn-2093',
        'moorlight/kn-2093': 'moorlight/km-4417',
      };
      const lines: number[] = [];
      sheet.rows = sheet.rows.map((row, index) => {
        const profile = turned[row.profile];
        if (profile === undefined) return row;
        lines.push(lineOf(index));
        return { ...row, profile };
      });
      return { rule: 'mistaken-series', lines };
    },
  },
  'a block of another profile pasted': {
    sessions: [1, 3],
    put: (sheet, random) => {
      const lines: number[] = [];
      const others = sheet.rows.filter((row) => row.profile === 'moorlight/km-4417' && isScale(row));
      const first = 8 + Math.floor(random.uniform(0, 6));
      sheet.rows = sheet.rows.map((row, index) => {
        const isIn = isScale(row) && row.step >= first && row.step < first + 14;
        if (row.profile !== 'moorlight/kn-2093' || !isIn) return row;
        lines.push(lineOf(index));
        const other = others.find(({ step, repeat }) => step === row.step && repeat === row.repeat);
        return { ...row, voltsRms: other?.voltsRms ?? 0, thdPercent: other?.thdPercent ?? null };
      });
      return { rule: 'copied-block', lines };
    },
  },
  'a decimal point in a THD past the clip point': {
    sessions: [1, 3],
    put: (sheet, random) => {
      const clipping = sheet.rows.flatMap((row, index) =>
        isScale(row) &&
        row.step > 3 &&
        row.step < highestStep &&
        (row.thdPercent ?? 0) > 4 &&
        row.step % 8 !== 4
          ? [index]
          : [],
      );
      // The first step of clipping may be anything: the one below has to clip already.
      const index = anyOf(
        clipping.filter((one) => (sheet.rows[one - 1]?.thdPercent ?? 0) > 2),
        random,
      );
      if (index === undefined) return undefined;
      change(sheet, index, { thdPercent: Number(((sheet.rows[index]?.thdPercent ?? 0) / 10).toFixed(4)) });
      return { rule: 'distortion-falls', lines: [lineOf(index)] };
    },
  },
};

export interface MistakeTally {
  /** By mistake: how often put, found at all, and named by the right rule at a right place and nothing else. */
  readonly byKind: Map<string, { put: number; found: number; named: number }>;
  readonly wrong: string[];
}

/** Puts one mistake into the newest sheet of each of many simulated bases. */
export async function tallyMistakes(seed: number, bases: number): Promise<MistakeTally> {
  const tally: MistakeTally = { byKind: new Map(), wrong: [] };
  const names = Object.keys(mistakes);
  for (let base = 0; base < bases; base += 1) {
    const name = names[base % names.length] ?? '';
    const mistake = mistakes[name];
    if (!mistake) throw new Error('no mistake');
    const random = randomStream(seed, `mistake ${base}`);
    const [least, most] = mistake.sessions;
    const { sheets, files } = simulatedBase(
      seed,
      `mistaken ${base}`,
      Math.floor(random.uniform(least, most + 1)),
    );
    const sheet = sheets.at(-1);
    const put = sheet && mistake.put(sheet, random);
    if (!sheet || !put) continue;
    const findings = (await checkContent(files())).findings.filter((one) => one.severity !== 'note');
    const [only] = findings;
    const isNamed =
      findings.length === 1 &&
      only?.rule === put.rule &&
      only.place.file === `outputs/${sheet.session}/readings.csv` &&
      put.lines.includes(only.place.line);
    const count = tally.byKind.get(name) ?? { put: 0, found: 0, named: 0 };
    tally.byKind.set(name, {
      put: count.put + 1,
      found: count.found + Number(findings.length > 0),
      named: count.named + Number(isNamed),
    });
    if (isNamed) continue;
    const shown = findings.map((one) => `${one.rule} ${one.place.file}:${one.place.line} ${one.message}`);
    tally.wrong.push(
      `${base}: ${name}, ${sheets.length} sessions, ${sheet.session}:${put.lines[0]}: ${shown.join(' | ') || 'nothing'}`,
    );
  }
  return tally;
}
