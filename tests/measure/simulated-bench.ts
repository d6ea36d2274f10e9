/** Simulated benches: a unit whose truth is known, read with every error a session's entry admits. */
import type { Session } from '../../schemas/index.ts';
import { clipSine } from '../../src/demo/clipped-sine.ts';
import { type RandomStream, randomStream } from '../../src/demo/random.ts';
import { highPassDb, lowPassDb, peakDb } from '../../src/measure/filter-levels.ts';
import {
  type CharacteristicName,
  characterise,
  exactCentre,
  hardClipOverdriveDb,
  type ProfileOutput,
  type Run,
} from '../../src/measure/index.ts';
import { session } from './bench.ts';

/** One made-up unit: 2 dB a step, a boost, a high-pass, a treble roll-off, a rear 6 dB down, 0.2 Ω inside. */
export interface SimulatedUnit {
  readonly boost?: { readonly hz: number; readonly gainDb: number; readonly q: number };
  readonly highPass: { readonly hz: number; readonly order: number };
  readonly lowPass: { readonly hz: number; readonly order: number };
}

const sourceOhms = 0.2;
const stepDb = 2;
const highestStep = 30;
const topVolts = 12;
const rearDb = -6;
const rightDb = 0.15;
const noiseVolts = 0.00083;
const baseThdPercent = 0.05;
const railPeakVolts = 12;

function responseDb(unit: SimulatedUnit, hz: number): number {
  const shape = (at: number): number =>
    highPassDb(at, unit.highPass.hz, unit.highPass.order) +
    lowPassDb(at, unit.lowPass.hz, unit.lowPass.order) +
    (unit.boost ? peakDb(at, unit.boost.hz, unit.boost.gainDb, unit.boost.q) : 0);
  return shape(hz) - shape(1000);
}

/** Volts rms and THD at an output; `drive` and `rail` are how far signal and supply are off, as ratios. */
function output(
  unit: SimulatedUnit,
  at: { channel: string; step: number; hz: number; loadOhms: number; drive: number; rail: number },
): { voltsRms: number; thdPercent: number } {
  if (at.step === 0) return { voltsRms: noiseVolts, thdPercent: 100 };
  const trimDb = at.channel.startsWith('R') ? rearDb : at.channel === 'FR' ? rightDb : 0;
  const levelDb = (at.step - highestStep) * stepDb + trimDb + responseDb(unit, at.hz);
  const amplitude = Math.SQRT2 * topVolts * 10 ** (levelDb / 20) * at.drive;
  const clipped = clipSine(amplitude, railPeakVolts * at.rail);
  return {
    voltsRms: (clipped.rms * at.loadOhms) / (at.loadOhms + sourceOhms),
    thdPercent: Math.hypot(100 * clipped.thdRatio, baseThdPercent),
  };
}

/** One bench's session of the unit: errors drawn within what its entry says, then read and rounded. */
function simulatedRun(unit: SimulatedUnit, random: RandomStream, loadOhms: number, id: string): Run {
  const conditions: Session = {
    ...session,
    bench: id,
    source: `bench-${id}`,
    instrument: {
      ...session.instrument,
      accuracy: [
        { fromHz: 10, toHz: 45, ofReadingPercent: 0.4, counts: 10 },
        { fromHz: 45, toHz: 100_000, ofReadingPercent: 0.25, counts: 10 },
      ],
    },
    signal: { ...session.signal, levelToleranceDb: 0.03 },
    load: { ohms: loadOhms, tolerancePercent: 1 },
    supply: { volts: 14.4, toleranceVolts: 0.05 },
  };
  const { accuracy, resolutionVolts, thdOfReadingPercent = 0 } = conditions.instrument;
  const within = (limit: number): number => random.uniform(-limit, limit);
  const gain = accuracy.map((band) => 1 + within(band.ofReadingPercent / 100));
  const drive = 10 ** (within(conditions.signal.levelToleranceDb) / 20);
  const rail = 1 + within(conditions.supply.toleranceVolts / conditions.supply.volts);
  const ohms = loadOhms * (1 + within(0.01));
  const rows: Run['readings'][number][] = [];
  const read = (channel: 'FL' | 'FR' | 'RL' | 'RR', step: number, hz: number, repeats = 1): void => {
    const band = accuracy.findIndex((one) => hz >= one.fromHz && hz <= one.toHz);
    const counts = within((accuracy[band]?.counts ?? 0) * resolutionVolts);
    const state = output(unit, { channel, step, hz, loadOhms: ohms, drive, rail });
    for (let repeat = 1; repeat <= repeats; repeat += 1) {
      const scatter = 1 + 0.0012 * random.gaussian();
      const volts = state.voltsRms * (gain[band] ?? 1) * scatter + counts;
      rows.push({
        id: `${id}:${rows.length + 2}`,
        session: id,
        profile: 'p',
        channel,
        step,
        hz,
        voltsRms: Math.max(0, Math.round(volts / resolutionVolts) * resolutionVolts),
        thdPercent:
          hz === 1000 && step > 0 ? state.thdPercent * (1 + within(thdOfReadingPercent / 100)) : null,
        repeat,
      });
    }
  };
  for (let step = 0; step <= highestStep; step += 1) read('FL', step, 1000, step % 6 === 0 ? 3 : 1);
  for (const step of [14, 20]) {
    for (let band = -17; band <= 13; band += 1) if (band !== 0) read('FL', step, exactCentre(band));
  }
  for (const channel of ['FR', 'RL', 'RR'] as const)
    for (const step of [14, 20]) read(channel, step, 1000, 2);
  return { session: id, conditions, readings: rows };
}

/** The truth under nominal conditions of what a continuous characteristic of `computed` says. */
function truth(unit: SimulatedUnit, computed: ProfileOutput['characteristics'][number]): number {
  const nominal = { loadOhms: computed.conditions.loadOhms, drive: 1, rail: 1, channel: 'FL', hz: 1000 };
  const step = computed.conditions.step ?? 0;
  const atLevel = (levelDb: number, from: number, to: number): number => {
    let [inside, outside] = [from, to];
    for (let halving = 0; halving < 60; halving += 1) {
      const middle = Math.sqrt(inside * outside);
      if (responseDb(unit, middle) > levelDb) inside = middle;
      else outside = middle;
    }
    return Math.sqrt(inside * outside);
  };
  const summit = (): { hz: number; levelDb: number } => {
    const fine = Array.from({ length: 1200 }, (_, index) => 20 * 2 ** (index / 330));
    const hz = fine.reduce((best, one) => (responseDb(unit, one) > responseDb(unit, best) ? one : best));
    return { hz, levelDb: responseDb(unit, hz) };
  };
  const half = (): number => summit().levelDb / 2;
  const truths: Readonly<Record<CharacteristicName, () => number>> = {
    'clean-volts': () => output(unit, { ...nominal, step }).voltsRms,
    'step-size': () => stepDb,
    'bass-boost': () =>
      computed.value < 0.5 ? responseDb(unit, computed.conditions.hz ?? 1000) : summit().levelDb,
    'bass-boost-frequency': () => summit().hz,
    'bass-boost-bandwidth': () =>
      Math.log2(atLevel(half(), summit().hz, 900) / atLevel(half(), summit().hz, 5)),
    'lower-corner': () => atLevel(10 * Math.log10(0.5), unit.boost?.hz ?? 900, 2),
    'lower-slope': () => 20 * unit.highPass.order * Math.log10(2),
    'upper-corner': () => atLevel(10 * Math.log10(0.5), 1100, 80_000),
    'upper-slope': () => 20 * unit.lowPass.order * Math.log10(2),
    'treble-tilt': () => responseDb(unit, 10_000),
    'rear-to-front': () => rearDb - rightDb / 2,
    'left-to-right': () => rightDb,
    'source-resistance': () => sourceOhms,
    'noise-floor': () => noiseVolts,
    'highest-clean-step': () => cleanStepOf(unit, false),
    'boosted-clean-step': () => cleanStepOf(unit, true),
    'limiter-onset': () => highestStep + 1 - Math.floor(overHighest() / stepDb),
    ripple: () => rippleDb(unit),
  };
  return truths[computed.name]();
}

/** Ripple as the measurement defines it: about the line through 315 Hz and 5 kHz, at third octaves. */
function rippleDb(unit: SimulatedUnit): number {
  const bands = Array.from({ length: 13 }, (_, index) => index - 5);
  const level = (band: number): number => responseDb(unit, exactCentre(band));
  const off = bands.map((band) => level(band) - (level(-5) + ((band + 5) / 12) * (level(7) - level(-5))));
  return Math.max(...off) - Math.min(...off);
}

/** How far the highest step would be over the rail, less the 0.3 dB that count as compression, dB. */
function overHighest(): number {
  for (let step = 0; step <= highestStep; step += 1) {
    const levelDb = (step - highestStep) * stepDb;
    const ideal = topVolts * 10 ** (levelDb / 20);
    const real = clipSine(Math.SQRT2 * ideal, railPeakVolts).rms;
    if (20 * Math.log10(ideal / real) > 0.3) return (highestStep + 1 - step) * stepDb;
  }
  return 0;
}

function cleanStepOf(unit: SimulatedUnit, loudest: boolean): number {
  const boostDb = loudest
    ? Math.max(0, ...Array.from({ length: 31 }, (_, index) => responseDb(unit, exactCentre(index - 17))))
    : 0;
  const limitDb = 20 * Math.log10(railPeakVolts / Math.SQRT2 / topVolts) + hardClipOverdriveDb(0.01);
  return Math.floor(highestStep + (limitDb - boostDb) / stepDb);
}

export interface Coverage {
  /** Benches that gave the value. */
  benches: number;
  /** Of these, those that gave a bound instead of a value. */
  bounds: number;
  /** Of these, those whose interval holds the truth. */
  within: number;
}

/** Coverage of every characteristic over many simulated benches, each with a unit of its own; repeatable by its seed. */
export function coverage(kind: UnitKind, benches: number, seed: number): Map<CharacteristicName, Coverage> {
  const counts = new Map<CharacteristicName, Coverage>();
  for (let bench = 0; bench < benches; bench += 1) {
    const random = randomStream(seed, `bench ${bench}`);
    const unit = unitOf(kind, random);
    const runs = [simulatedRun(unit, random, 4, 'four-ohms'), simulatedRun(unit, random, 2, 'two-ohms')];
    const found = characterise('p', runs, { ratedLoadOhms: 4, highestStep });
    for (const one of found.characteristics) {
      const count = counts.get(one.name) ?? { benches: 0, bounds: 0, within: 0 };
      counts.set(one.name, count);
      const value = truth(unit, one);
      count.benches += 1;
      if (one.bound !== 'exact') count.bounds += 1;
      const low = one.bound === 'at-most' ? Number.NEGATIVE_INFINITY : one.value - one.expandedUncertainty;
      const high = one.bound === 'at-least' ? Number.POSITIVE_INFINITY : one.value + one.expandedUncertainty;
      if (value >= low && value <= high) count.within += 1;
    }
  }
  return counts;
}

/** A unit drawn at random: where its corners fall between the frequencies played must not matter. */
export type UnitKind = 'filtered' | 'boosted' | 'boosted-and-filtered';

function unitOf(kind: UnitKind, random: RandomStream): SimulatedUnit {
  const between = (low: number, high: number): number => low * (high / low) ** random.uniform(0, 1);
  if (kind === 'filtered') {
    return {
      highPass: { hz: between(60, 120), order: 1 + Math.floor(random.uniform(1, 4)) },
      lowPass: { hz: between(7500, 13_000), order: 2 },
    };
  }
  const boost = { hz: between(50, 110), gainDb: between(4, 9), q: between(0.8, 1.5) };
  if (kind === 'boosted') return { boost, highPass: { hz: 5, order: 1 }, lowPass: { hz: 30_000, order: 2 } };
  // A filter that keeps what the speakers cannot play away from them, below the boost.
  return {
    boost,
    highPass: { hz: between(20, 45), order: 1 + Math.floor(random.uniform(1, 4)) },
    lowPass: { hz: between(7500, 13_000), order: 2 },
  };
}
