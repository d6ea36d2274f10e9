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
  const influences = new SessionInfluences(run, scatter);
  const points: Point[] = [];
  for (const group of repeated) {
    const point = pointOf(group, run, influences);
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

/** What makes the points of a session uncertain: points of one band and as many repeats share it, made once. */
class SessionInfluences {
  readonly driveToleranceDb: number;
  readonly #run: Run;
  readonly #scatter: Scatter;
  readonly #signal: Influences['signal'];
  readonly #load: Influences['load'];
  /** By band of the voltmeter's specification, then by number of repeats. */
  readonly #known: readonly Map<number, Influences>[];

  constructor(run: Run, scatter: Scatter) {
    const { instrument, signal, supply, load } = run.conditions;
    this.#run = run;
    this.#scatter = scatter;
    this.#signal = { limit: dbToRelative(signal.levelToleranceDb), id: `signal ${run.session}` };
    this.#load = {
      limit: (load.tolerancePercent / 100) * (mostSourceToLoad / (1 + mostSourceToLoad)),
      id: `load ${run.session}`,
    };
    this.#known = instrument.accuracy.map(() => new Map());
    this.driveToleranceDb = signal.levelToleranceDb + relativeToDb(supply.toleranceVolts / supply.volts);
  }

  /** Undefined outside the specification: nothing vouches for a reading there. */
  at(hz: number, repeats: number): Influences | undefined {
    const { accuracy } = this.#run.conditions.instrument;
    const band = accuracy.findIndex((one) => hz >= one.fromHz && hz <= one.toHz);
    const known = this.#known[band];
    if (!known) return undefined;
    const before = known.get(repeats);
    if (before) return before;
    const influences = this.#made(band, repeats);
    if (influences) known.set(repeats, influences);
    return influences;
  }

  #made(band: number, repeats: number): Influences | undefined {
    const { instrument, bench } = this.#run.conditions;
    const accuracy = instrument.accuracy[band];
    return (
      accuracy && {
        gain: { limit: accuracy.ofReadingPercent / 100, id: `gain ${bench} ${instrument.name} ${band}` },
        signal: this.#signal,
        load: this.#load,
        countsVolts: accuracy.counts * instrument.resolutionVolts,
        resolutionVolts: instrument.resolutionVolts,
        repeats: {
          relative: this.#scatter.relative / Math.sqrt(repeats),
          degreesOfFreedom: this.#scatter.degreesOfFreedom,
        },
      }
    );
  }
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
  { session, conditions }: Run,
  sessionInfluences: SessionInfluences,
): Point | undefined {
  const [first] = group;
  const influences = first && sessionInfluences.at(first.hz, group.length);
  if (!influences) return undefined;
  return {
    session,
    source: conditions.source,
    channel: first.channel,
    step: first.step,
    hz: first.hz,
    voltsRms: meanVolts(group),
    thdPercent: meanThd(group),
    thdRelativeLimit: (conditions.instrument.thdOfReadingPercent ?? 0) / 100,
    driveToleranceDb: sessionInfluences.driveToleranceDb,
    readings: group.map((reading) => reading.id),
    influences,
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
