/** Points: the repeats of one reading brought together, with the uncertainty of their mean. */
import { channels, type Session } from '../../schemas/index.ts';
import type { BenchReading } from '../base/readings.ts';
import { dbToRelative, ratioDb, relativeToDb } from './level.ts';
import type { Quantity } from './quantity.ts';
import {
  type Component,
  DeferredQuantity,
  Gathered,
  limits,
  quantity,
  rectangular,
  scaled,
} from './uncertainty.ts';

/** What one session read of one profile. */
export interface Run {
  /** The session's id. */
  readonly session: string;
  readonly conditions: Session;
  readonly readings: readonly BenchReading[];
}

/** The mean of all repeats at one channel, step and frequency of one session, and what makes it uncertain. */
export interface Point {
  readonly session: string;
  readonly source: string;
  readonly channel: string;
  readonly step: number;
  readonly hz: number;
  readonly voltsRms: number;
  /** Mean THD, per cent of the fundamental; null where none was read. */
  readonly thdPercent: number | null;
  /** Limit of error of the THD as a fraction of it, from the analyser's specification. */
  readonly thdRelativeLimit: number;
  /** Limit of how far drive and rail may be off, dB: the signal's tolerance and the supply's. */
  readonly driveToleranceDb: number;
  readonly readings: readonly string[];
  readonly influences: Influences;
}

/**
 * What makes a point uncertain. Gain, signal and load act on all points of a session alike (the gain on all
 * of one voltmeter, whatever the session), so that they cancel in ratios; the rest is the point's own.
 */
export interface Influences {
  /** Limit of the voltmeter's gain error, relative, and which voltmeter and band of its specification. */
  readonly gain: { readonly limit: number; readonly id: string };
  /** Limit of error of the test signal's level, relative. */
  readonly signal: { readonly limit: number; readonly id: string };
  /** Limit of what the load's tolerance does to the output, relative. */
  readonly load: { readonly limit: number; readonly id: string };
  /** Limit of error in counts of the last digit, volts. */
  readonly countsVolts: number;
  /** One count of the last digit, volts. */
  readonly resolutionVolts: number;
  /** Standard deviation of the mean of the repeats, relative. */
  readonly repeats: { readonly relative: number; readonly degreesOfFreedom: number };
}

/**
 * An output's source resistance is at most this part of its load where it was not measured: a damping
 * factor of 10 (common practice, no source). It is what a load's tolerance acts through.
 */
const mostSourceToLoad = 0.1;

/** Brings the readings of a session together into points, in the order they were first read. */
export function pointsOf(run: Run): Point[] {
  const groups = new Map<number, BenchReading[]>();
  for (const reading of run.readings) {
    const key = pointKey(reading);
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  const repeated = [...groups.values()];
  const scatter = pooledScatter(repeated, run.conditions.instrument.resolutionVolts);
  const shared = sharedInfluences(run);
  const points: Point[] = [];
  for (const group of repeated) {
    const point = pointOf(group, run, scatter, shared);
    if (point) points.push(point);
  }
  return points;
}

/** Channel, step and frequency in one number: frequencies stay below 2^18 Hz and keep 25 bits of fraction. */
function pointKey({ channel, step, hz }: BenchReading): number {
  return (channels.indexOf(channel) * 256 + step) * 2 ** 18 + hz;
}

/** The influences that all points of a session share, made once. */
interface SharedInfluences {
  /** By band of the voltmeter's specification. */
  readonly gains: readonly Influences['gain'][];
  readonly signal: Influences['signal'];
  readonly load: Influences['load'];
  readonly driveToleranceDb: number;
}

function sharedInfluences({ session, conditions }: Run): SharedInfluences {
  const { instrument, bench, signal, supply, load } = conditions;
  return {
    gains: instrument.accuracy.map(({ ofReadingPercent }, band) => ({
      limit: ofReadingPercent / 100,
      id: `gain ${bench} ${instrument.name} ${band}`,
    })),
    signal: { limit: dbToRelative(signal.levelToleranceDb), id: `signal ${session}` },
    load: {
      limit: (load.tolerancePercent / 100) * (mostSourceToLoad / (1 + mostSourceToLoad)),
      id: `load ${session}`,
    },
    driveToleranceDb: signal.levelToleranceDb + relativeToDb(supply.toleranceVolts / supply.volts),
  };
}

interface Scatter {
  /** Standard deviation of one reading, relative. */
  readonly relative: number;
  readonly degreesOfFreedom: number;
}

/** Below this many counts a reading's scatter is its last digit, not the method's repeatability. */
const leastCountsForScatter = 200;

/**
 * Relative standard deviation of a single reading, pooled over all points that were repeated: few repeats
 * at many points tell it better than each point's own (GUM 4.2.4, H.3.6 on pooled estimates).
 */
function pooledScatter(groups: readonly (readonly BenchReading[])[], resolutionVolts: number): Scatter {
  let sumOfSquares = 0;
  let degreesOfFreedom = 0;
  for (const group of groups) {
    const mean = meanOf(group.map((reading) => reading.voltsRms));
    if (group.length < 2 || mean < leastCountsForScatter * resolutionVolts) continue;
    sumOfSquares += group.reduce((sum, reading) => sum + (reading.voltsRms / mean - 1) ** 2, 0);
    degreesOfFreedom += group.length - 1;
  }
  return degreesOfFreedom === 0
    ? { relative: 0, degreesOfFreedom: Number.POSITIVE_INFINITY }
    : { relative: Math.sqrt(sumOfSquares / degreesOfFreedom), degreesOfFreedom };
}

function pointOf(
  group: readonly BenchReading[],
  run: Run,
  scatter: Scatter,
  shared: SharedInfluences,
): Point | undefined {
  const [first] = group;
  if (!first) return undefined;
  const { instrument, source } = run.conditions;
  const band = instrument.accuracy.findIndex((one) => first.hz >= one.fromHz && first.hz <= one.toHz);
  const accuracy = instrument.accuracy[band];
  const gain = shared.gains[band];
  // Outside the specification nothing vouches for the reading: it is no point.
  if (!accuracy || !gain) return undefined;
  return {
    session: run.session,
    source,
    channel: first.channel,
    step: first.step,
    hz: first.hz,
    voltsRms: group.length === 1 ? first.voltsRms : meanOf(group.map((reading) => reading.voltsRms)),
    thdPercent: meanThd(group),
    thdRelativeLimit: (instrument.thdOfReadingPercent ?? 0) / 100,
    driveToleranceDb: shared.driveToleranceDb,
    readings: group.map((reading) => reading.id),
    influences: {
      gain,
      signal: shared.signal,
      load: shared.load,
      countsVolts: accuracy.counts * instrument.resolutionVolts,
      resolutionVolts: instrument.resolutionVolts,
      repeats: {
        relative: scatter.relative / Math.sqrt(group.length),
        degreesOfFreedom: scatter.degreesOfFreedom,
      },
    },
  };
}

function meanThd(group: readonly BenchReading[]): number | null {
  const read = group.flatMap(({ thdPercent }) => (thdPercent === null ? [] : [thdPercent]));
  return read.length === 0 ? null : meanOf(read);
}

/** The budgets of points already made: each point is compared with many. */
const budgets = new WeakMap<Point, readonly Component[]>();

/** The budget of a point's volts, relative to them: what it shares first, then what is its own. */
function relativeBudget(point: Point): readonly Component[] {
  const known = budgets.get(point);
  if (known) return known;
  const { gain, signal, load, countsVolts, resolutionVolts, repeats } = point.influences;
  // The first reading's id names the point, so that what is its own cancels where it meets itself.
  const [own = ''] = point.readings;
  const budget: Component[] = [
    limits('voltmeter gain', gain.limit, gain.id),
    limits('signal level', signal.limit, signal.id),
    limits('load', load.limit, load.id),
    limits('counts', countsVolts / point.voltsRms, `counts ${own}`),
    limits('resolution', resolutionVolts / 2 / point.voltsRms, `resolution ${own}`),
    {
      name: 'repeats',
      standardUncertainty: repeats.relative,
      degreesOfFreedom: repeats.degreesOfFreedom,
      shape: undefined,
      id: `repeats ${own}`,
    },
  ];
  budgets.set(point, budget);
  return budget;
}

/** The volts of a point with their budget. */
export function pointVolts(point: Point): Quantity {
  const { gain, signal, load, countsVolts, resolutionVolts, repeats } = point.influences;
  const volts = point.voltsRms;
  if (volts === 0) {
    return quantity(0, 'V', [limits('counts', countsVolts), limits('resolution', resolutionVolts / 2)]);
  }
  const gathered = new Gathered();
  gathered.limits(gain.limit * volts);
  gathered.limits(signal.limit * volts);
  gathered.limits(load.limit * volts);
  gathered.limits(countsVolts);
  gathered.limits(resolutionVolts / 2);
  gathered.part(repeats.relative * volts, repeats.degreesOfFreedom);
  return new DeferredQuantity(volts, 'V', gathered, () => scaled(relativeBudget(point), volts));
}

/**
 * The level of `point` relative to `reference`, dB. What the two share cancels: the signal level and the load
 * within a session, the voltmeter's gain where one band of its specification covers both (GUM 5.2).
 */
export function levelBetween(point: Point, reference: Point): Quantity {
  const perRelative = relativeToDb(1);
  const gathered = new Gathered();
  for (const shared of ['gain', 'signal', 'load'] as const) {
    const [one, other] = [point.influences[shared], reference.influences[shared]];
    if (one.id === other.id) gathered.limits((one.limit - other.limit) * perRelative);
    else {
      gathered.limits(one.limit * perRelative);
      gathered.limits(other.limit * perRelative);
    }
  }
  if (point !== reference) {
    for (const { voltsRms, influences } of [point, reference]) {
      gathered.limits((influences.countsVolts / voltsRms) * perRelative);
      gathered.limits((influences.resolutionVolts / 2 / voltsRms) * perRelative);
      gathered.part(influences.repeats.relative * perRelative, influences.repeats.degreesOfFreedom);
    }
  }
  return new DeferredQuantity(ratioDb(point.voltsRms / reference.voltsRms), 'dB', gathered, () => [
    ...scaled(relativeBudget(point), perRelative),
    ...scaled(relativeBudget(reference), -perRelative),
  ]);
}

/**
 * Standard uncertainty, dB, of what is a point's own: counts, resolution, repeats. For comparing many points
 * of one session, where all else cancels.
 */
export function ownUncertaintyDb({ voltsRms, influences }: Point): number {
  const { countsVolts, resolutionVolts, repeats } = influences;
  const relative = Math.hypot(
    rectangular(countsVolts / voltsRms),
    rectangular(resolutionVolts / 2 / voltsRms),
    repeats.relative,
  );
  return relativeToDb(relative);
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
