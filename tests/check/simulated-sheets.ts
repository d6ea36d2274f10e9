/**
 * Made-up sheets of an invented unit for the rules about readings: the example base with sessions of its own,
 * read with the errors their entries admit. Everything follows from the seed.
 */
import type { Channel } from '../../schemas/index.ts';
import { MemoryFiles } from '../../src/base/index.ts';
import { clipSine } from '../../src/demo/clipped-sine.ts';
import { type RandomStream, randomStream } from '../../src/demo/random.ts';
import { highPassDb, lowPassDb, peakDb } from '../../src/measure/filter-levels.ts';
import { exactCentre } from '../../src/measure/index.ts';
import { exampleFiles } from './example-base.ts';

export interface SheetRow {
  readonly profile: string;
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  readonly voltsRms: number;
  readonly thdPercent: number | null;
  readonly repeat: number;
}

export interface Sheet {
  readonly session: string;
  readonly resolutionVolts: number;
  rows: SheetRow[];
  /** The text of its session.yaml. */
  entry: string;
}

export const profiles = ['moorlight/km-4417', 'moorlight/kn-2093', 'moorlight/rt-5561'] as const;
export const highestStep = 30;

interface Unit {
  /** dB below the highest step, by step. */
  readonly stepDb: readonly number[];
  readonly tunings: readonly Tuning[];
  readonly railPeakVolts: number;
  readonly noiseVolts: number;
  readonly baseThdPercent: number;
  readonly sourceOhms: number;
  readonly rightDb: number;
}

interface Tuning {
  readonly topVolts: number;
  readonly boost: { readonly hz: number; readonly gainDb: number; readonly q: number };
  readonly highPass: { readonly hz: number; readonly order: number };
  readonly lowPassHz: number;
  readonly rearDb: number;
  readonly fades: boolean;
}

function drawUnit(random: RandomStream): Unit {
  const [bottomDb, topDb] = [random.uniform(1.3, 2.6), random.uniform(1.1, 2)];
  const stepDb = Array.from({ length: highestStep + 1 }, () => 0);
  for (let step = highestStep - 1; step >= 0; step -= 1) {
    const rise = bottomDb + ((topDb - bottomDb) * step) / highestStep;
    stepDb[step] = (stepDb[step + 1] ?? 0) - rise;
  }
  return {
    stepDb,
    tunings: profiles.map((_, index) => ({
      // One that clips, one for an amplifier, one between.
      topVolts: [random.uniform(11, 16), random.uniform(2, 4), random.uniform(6, 12)][index] ?? 10,
      boost: { hz: random.uniform(45, 110), gainDb: random.uniform(0, 9), q: random.uniform(0.7, 1.6) },
      highPass: { hz: random.uniform(5, 120), order: 1 + Math.floor(random.uniform(0, 4)) },
      lowPassHz: random.uniform(12_000, 40_000),
      rearDb: random.uniform(0, 1) < 0.3 ? Number.NEGATIVE_INFINITY : -random.uniform(0, 9),
      fades: random.uniform(0, 1) < 0.5,
    })),
    railPeakVolts: random.uniform(11.6, 13.6),
    noiseVolts: random.uniform(0.0002, 0.0015),
    baseThdPercent: random.uniform(0.06, 0.15),
    sourceOhms: random.uniform(0.05, 0.3),
    rightDb: random.uniform(-0.25, 0.25),
  };
}

function responseDb(tuning: Tuning, step: number, hz: number): number {
  const { boost, highPass, lowPassHz, fades } = tuning;
  const gainDb = fades ? boost.gainDb * Math.max(0, 1 - step / 24) : boost.gainDb;
  const shape = (at: number): number =>
    peakDb(at, boost.hz, gainDb, boost.q) +
    highPassDb(at, highPass.hz, highPass.order) +
    lowPassDb(at, lowPassHz, 2);
  return shape(hz) - shape(1000);
}

/** Benches of different quality, as their entries state them. */
const benches = [
  {
    resolutionVolts: 0.0001,
    percent: 0.25,
    counts: 5,
    levelDb: 0.03,
    loadPercent: 0.5,
    supplyVolts: 0.05,
    floor: 0.02,
    thd: 5,
  },
  {
    resolutionVolts: 0.001,
    percent: 0.5,
    counts: 4,
    levelDb: 0.1,
    loadPercent: 1,
    supplyVolts: 0.1,
    floor: 0.05,
    thd: 8,
  },
  {
    resolutionVolts: 0.001,
    percent: 0.9,
    counts: 5,
    levelDb: 0.2,
    loadPercent: 2,
    supplyVolts: 0.2,
    floor: 0.2,
    thd: 12,
  },
] as const;

export interface SimulatedBase {
  readonly sheets: Sheet[];
  /** The base's files as they stand. */
  readonly files: () => MemoryFiles;
}

/** A base whose every profile was measured in each of some sessions, without a mistake. */
export function simulatedBase(seed: number, name: string, sessions: number): SimulatedBase {
  const random = randomStream(seed, name);
  const unit = drawUnit(random);
  const sheets = Array.from({ length: sessions }, (_, index) => drawSheet(unit, random, index));
  return { sheets, files: () => filesOf(sheets) };
}

function drawSheet(unit: Unit, random: RandomStream, index: number): Sheet {
  const bench = benches[Math.floor(random.uniform(0, benches.length))] ?? benches[0];
  const within = (limit: number): number => random.uniform(-limit, limit);
  const gain = 1 + within(bench.percent / 100);
  const drive = 10 ** (within(bench.levelDb) / 20);
  const rail = 1 + within(bench.supplyVolts) / 14.4;
  const ohms = 4 * (1 + within(bench.loadPercent / 100));
  const rows: SheetRow[] = [];
  const session = `2026-0${index + 1}-bench`;
  const readThd = bench.thd / 100;
  profiles.forEach((profile, at) => {
    const tuning = unit.tunings[at];
    if (!tuning) return;
    const read = (channel: Channel, step: number, hz: number, withThd: boolean, repeats: number): void => {
      const trimDb = channel.startsWith('R') ? tuning.rearDb : channel === 'FR' ? unit.rightDb : 0;
      const levelDb = (unit.stepDb[step] ?? 0) + trimDb + responseDb(tuning, step, hz);
      const amplitude = Math.SQRT2 * tuning.topVolts * drive * 10 ** (levelDb / 20);
      const silent = amplitude === 0 || step === 0;
      const clipped = silent ? { rms: 0, thdRatio: 0 } : clipSine(amplitude, unit.railPeakVolts * rail);
      const tone = (clipped.rms * ohms) / (ohms + unit.sourceOhms);
      const volts = Math.hypot(tone, unit.noiseVolts);
      const thd =
        100 * Math.hypot(clipped.thdRatio, unit.baseThdPercent / 100, (0.04 * unit.noiseVolts) / tone);
      for (let repeat = 1; repeat <= repeats; repeat += 1) {
        const counts = within(bench.counts) * bench.resolutionVolts;
        const reading = volts * gain * (1 + 0.0012 * random.gaussian()) + counts;
        const thdRead = Math.hypot(thd * (1 + within(readThd)), bench.floor);
        rows.push({
          profile,
          channel,
          step,
          hz,
          voltsRms: rounded(Math.max(0, reading), bench.resolutionVolts),
          thdPercent: withThd && !silent ? Math.min(100, Number(thdRead.toFixed(3))) : null,
          repeat,
        });
      }
    };
    for (let step = 0; step <= highestStep; step += 1) read('FL', step, 1000, true, step % 8 === 4 ? 3 : 1);
    for (const step of [10, 16, 20]) {
      for (let band = -17; band <= 13; band += 1) {
        if (band !== 0) read('FL', step, Number(exactCentre(band).toPrecision(6)), false, 1);
      }
      for (const channel of ['FR', 'RL', 'RR'] as const) read(channel, step, 1000, false, 1);
    }
  });
  return { session, resolutionVolts: bench.resolutionVolts, rows, entry: entryOf(bench, index) };
}

export function rounded(volts: number, resolutionVolts: number): number {
  return Number((Math.round(volts / resolutionVolts) * resolutionVolts).toFixed(6));
}

function entryOf(bench: (typeof benches)[number], index: number): string {
  return `source: 2026-0${index + 1}-bench
date: 2026-0${index + 1}-03
bench: bench-${index}
takenBy: Bench technician
instrument:
  name: Voltmeter ${index}
  resolutionVolts: ${bench.resolutionVolts}
  accuracy: [{ fromHz: 10, toHz: 30000, ofReadingPercent: ${bench.percent}, counts: ${bench.counts} }]
  thdFloorPercent: ${bench.floor}
  thdOfReadingPercent: ${bench.thd}
signal: { kind: sine, levelDbfs: 0, levelToleranceDb: ${bench.levelDb}, from: Disc }
load: { ohms: 4, tolerancePercent: ${bench.loadPercent} }
supply: { volts: 14.4, toleranceVolts: ${bench.supplyVolts} }
method: Voltmeter across the load.
`;
}

function filesOf(sheets: readonly Sheet[]): MemoryFiles {
  const files = new Map<string, string>();
  for (const [file, text] of exampleFiles) {
    if (/^(outputs|statements)\/|-session\.yaml$|rider-letter/.test(file)) continue;
    files.set(
      file,
      text
        .replace('sameAs: moorlight/km-4417\n', '')
        .replaceAll('shed-session', sheets[0]?.session ?? '')
        .replaceAll('loft-session', sheets[0]?.session ?? ''),
    );
  }
  for (const [index, { session, entry, rows }] of sheets.entries()) {
    const source = exampleFiles.get('sources/shed-session.yaml') ?? '';
    files.set(`sources/${session}.yaml`, source.replaceAll('2025-05-12', `2026-0${index + 1}-03`));
    files.set(`outputs/${session}/session.yaml`, entry);
    files.set(`outputs/${session}/readings.csv`, sheetText(rows));
  }
  return new MemoryFiles('simulated', files);
}

function sheetText(rows: readonly SheetRow[]): string {
  const lines = rows.map((row) =>
    [row.profile, row.channel, row.step, row.hz, row.voltsRms, row.thdPercent ?? '', row.repeat].join(','),
  );
  return `profile,channel,step,hz,voltsRms,thdPercent,repeat\n${lines.join('\n')}\n`;
}
