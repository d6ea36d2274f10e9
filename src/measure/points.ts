/** Points: the repeats of one reading brought together, with the uncertainty of their mean. */
import type { Session } from '../../schemas/index.ts';
import type { BenchReading } from '../base/readings.ts';
import { dbToRelative, ratioDb, relativeToDb } from './level.ts';
import type { Quantity } from './quantity.ts';
import { type Component, quantity, rectangular } from './uncertainty.ts';

/** What one session read of one profile. */
export interface Run {
  /** The session's id. */
  readonly session: string;
  readonly conditions: Session;
  readonly readings: readonly BenchReading[];
}

/**
 * The mean of all repeats at one channel, step and frequency of one session. Its uncertainty is kept in
 * three parts, because the first two are shared by all points of a session and so cancel in ratios.
 */
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
  /** Gain error of the voltmeter, relative, one for each band of its specification. */
  readonly gain: { readonly band: number; readonly relative: number };
  /** Error of the test signal's level, relative: moves every output of the session alike. */
  readonly signalRelative: number;
  /** What is this point's own: counts, resolution and scatter of the repeats, volts. */
  readonly own: readonly Component[];
}

/** Brings the readings of a session together into points, in the order they were first read. */
export function pointsOf(run: Run): Point[] {
  const groups = new Map<string, BenchReading[]>();
  for (const reading of run.readings) {
    const key = `${reading.channel} ${reading.step} ${reading.hz}`;
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  const scatter = pooledScatter([...groups.values()], run.conditions.instrument.resolutionVolts);
  return [...groups.values()].flatMap((group) => pointOf(group, run, scatter) ?? []);
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

function pointOf(group: readonly BenchReading[], run: Run, scatter: Scatter): Point | undefined {
  const [first] = group;
  if (!first) return undefined;
  const { instrument, signal, source, supply } = run.conditions;
  const band = instrument.accuracy.findIndex((one) => first.hz >= one.fromHz && first.hz <= one.toHz);
  const accuracy = instrument.accuracy[band];
  // Outside the specification nothing vouches for the reading: it is no point.
  if (!accuracy) return undefined;
  const voltsRms = meanOf(group.map((reading) => reading.voltsRms));
  const thd = group.flatMap((reading) => (reading.thdPercent === null ? [] : [reading.thdPercent]));
  const specified = Number.POSITIVE_INFINITY;
  return {
    session: run.session,
    source,
    channel: first.channel,
    step: first.step,
    hz: first.hz,
    voltsRms,
    thdPercent: thd.length === 0 ? null : meanOf(thd),
    thdRelativeLimit: (instrument.thdOfReadingPercent ?? 0) / 100,
    driveToleranceDb: signal.levelToleranceDb + relativeToDb(supply.toleranceVolts / supply.volts),
    readings: group.map((reading) => reading.id),
    gain: { band, relative: rectangular(accuracy.ofReadingPercent / 100) },
    signalRelative: dbToRelative(rectangular(signal.levelToleranceDb)),
    own: [
      {
        name: 'counts',
        standardUncertainty: rectangular(accuracy.counts * instrument.resolutionVolts),
        degreesOfFreedom: specified,
      },
      {
        name: 'resolution',
        standardUncertainty: rectangular(instrument.resolutionVolts / 2),
        degreesOfFreedom: specified,
      },
      {
        name: 'repeats',
        standardUncertainty: (scatter.relative * voltsRms) / Math.sqrt(group.length),
        degreesOfFreedom: scatter.degreesOfFreedom,
      },
    ],
  };
}

/** The volts of a point with every component of its uncertainty. */
export function pointVolts(point: Point): Quantity {
  return quantity(point.voltsRms, 'V', [
    shared('voltmeter gain', point.gain.relative * point.voltsRms),
    shared('signal level', point.signalRelative * point.voltsRms),
    ...point.own,
  ]);
}

/**
 * The level of `point` relative to `reference`, dB, both of one session. What the two share cancels:
 * the signal level always, the voltmeter's gain where one band of its specification covers both.
 */
export function levelBetween(point: Point, reference: Point): Quantity {
  const components: Component[] = [
    ...point.own.map((one) => asDb(one, point.voltsRms)),
    ...reference.own.map((one) => asDb(one, reference.voltsRms)),
  ];
  if (point.gain.band !== reference.gain.band) {
    components.push(
      shared('voltmeter gain', relativeToDb(point.gain.relative)),
      shared('voltmeter gain', relativeToDb(reference.gain.relative)),
    );
  }
  return quantity(ratioDb(point.voltsRms / reference.voltsRms), 'dB', components);
}

function asDb(component: Component, voltsRms: number): Component {
  return { ...component, standardUncertainty: relativeToDb(component.standardUncertainty / voltsRms) };
}

function shared(name: string, standardUncertainty: number): Component {
  return { name, standardUncertainty, degreesOfFreedom: Number.POSITIVE_INFINITY };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
