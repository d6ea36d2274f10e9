/** Points: the repeats of one reading brought together, with the uncertainty of their mean. */
import { channels } from '../../schemas/index.ts';
import type { BenchReading } from '../base/readings.ts';
import { dbToRelative, relativeToDb } from './level.ts';
import type { Influences, Point, Run } from './point.ts';

/**
 * An output's source resistance is at most this part of its load where it was not measured: a damping
 * factor of 10 (common practice, no source). It is what a load's tolerance acts through.
 */
const mostSourceToLoad = 0.1;

/** Brings the readings of a session together into points, in the order they were first read. */
export function pointsOf(run: Run): Point[] {
  const repeated = repeatsOf(run.readings);
  const scatter = pooledScatter(repeated, run.conditions.instrument.resolutionVolts);
  const shared = sharedInfluences(run);
  const points: Point[] = [];
  for (const group of repeated) {
    const point = pointOf(group, run, scatter, shared);
    if (point) points.push(point);
  }
  return points;
}

/** Readings by channel, step and frequency, in the order they were first read. */
function repeatsOf(readings: readonly BenchReading[]): BenchReading[][] {
  const repeated: BenchReading[][] = [];
  const atStep = new Map<number, BenchReading[][]>();
  for (const reading of readings) {
    const { channel, step, hz } = reading;
    const key = channels.indexOf(channel) * 256 + step;
    let here = atStep.get(key);
    if (!here) {
      here = [];
      atStep.set(key, here);
    }
    const known = here.find((group) => group[0]?.hz === hz);
    if (known) known.push(reading);
    else {
      const group = [reading];
      here.push(group);
      repeated.push(group);
    }
  }
  return repeated;
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
    if (group.length < 2) continue;
    const mean = meanVolts(group);
    if (mean < leastCountsForScatter * resolutionVolts) continue;
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
    voltsRms: meanVolts(group),
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
  let [sum, count] = [0, 0];
  for (const { thdPercent } of group) {
    if (thdPercent === null) continue;
    sum += thdPercent;
    count += 1;
  }
  return count === 0 ? null : sum / count;
}

function meanVolts(group: readonly BenchReading[]): number {
  let sum = 0;
  for (const { voltsRms } of group) sum += voltsRms;
  return sum / group.length;
}
