/** Do two sessions that measured one profile under like conditions agree, reading by reading and as a whole? */

import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile';
import { normalisedError } from './consistency.ts';
import { ownUncertaintyDb, pointVolts } from './from-points.ts';
import { ratioDb, relativeToDb } from './level.ts';
import type { Point } from './point.ts';
import { quantity } from './propagate.ts';
import type { Quantity } from './quantity.ts';
import { frontChannel } from './session-points.ts';
import { type Component, limits, scaled } from './uncertainty.ts';

/** A point both sessions measured, and how far apart they read. */
export interface CommonPoint {
  readonly a: Point;
  readonly b: Point;
  readonly aVolts: Quantity;
  readonly bVolts: Quantity;
  /** E_n of the two. */
  readonly normalisedError: number;
  readonly differenceDb: number;
}

/**
 * The points two sessions have in common (channel, step, frequency), up to the highest step and the highest
 * volts that both play clean: above, the output hangs on supply and limiter more than on the profile.
 * Points where either reads nothing are left out.
 */
export function commonPoints(
  a: readonly Point[],
  b: readonly Point[],
  clean: { readonly step: number; readonly volts: number },
): CommonPoint[] {
  const key = (point: Point): string => `${point.channel} ${point.step} ${point.hz}`;
  const ofB = new Map(b.map((point) => [key(point), point]));
  return a.flatMap((point) => {
    const other = ofB.get(key(point));
    if (!other || point.step > clean.step) return [];
    if (point.voltsRms === 0 || other.voltsRms === 0) return [];
    if (Math.min(point.voltsRms, other.voltsRms) > clean.volts) return [];
    const aVolts = pointVolts(point);
    const bVolts = pointVolts(other);
    return [
      {
        a: point,
        b: other,
        aVolts,
        bVolts,
        normalisedError: normalisedError(aVolts, bVolts),
        differenceDb: ratioDb(point.voltsRms / other.voltsRms),
      },
    ];
  });
}

/**
 * The limit |E_n| may reach by chance in one of `comparisons` values that all agree: 1 for a single one
 * (ISO 13528, 9.7); for many, widened so that all of them together keep the 5 % chance of a false alarm
 * that a single one has (Bonferroni, each side of a normal distribution).
 */
export function normalisedErrorLimit(comparisons: number): number {
  const single = standardNormalQuantile(0.975);
  return Math.max(1, standardNormalQuantile(1 - 0.025 / Math.max(1, comparisons)) / single);
}

/**
 * What two sessions differ by over all their common points together, as E_n: the median difference against
 * the errors a session carries through all its points (voltmeter gain, signal level, load) and what is
 * left in the median of each point's own (1.25·σ/√n for a normal distribution). A bench whose
 * scale is off shows here even where no single reading stands out. Undefined for fewer than three points.
 */
export function sharedOffset(
  points: readonly CommonPoint[],
): { differenceDb: number; normalisedError: number } | undefined {
  if (points.length < 3) return undefined;
  const differences = points.map((point) => point.differenceDb).sort((x, y) => x - y);
  const differenceDb = differences[differences.length >> 1] ?? 0;
  // The shared part can only be as large as the smallest whole.
  const sharedDb = Math.min(...points.map(({ a, b }) => sharedExpandedDb(a, b)));
  const ownDb = points
    .map(({ a, b }) => Math.hypot(ownUncertaintyDb(a), ownUncertaintyDb(b)))
    .sort((x, y) => x - y);
  const medianOwnDb = 2 * (1.25 / Math.sqrt(points.length)) * (ownDb[ownDb.length >> 1] ?? 0);
  return { differenceDb, normalisedError: differenceDb / Math.hypot(sharedDb, medianOwnDb) };
}

/** What gain, signal level and load of two sessions let their readings differ by, dB, expanded to 95 %. */
function sharedExpandedDb(a: Point, b: Point): number {
  const shared = ({ influences: { gain, signal, load } }: Point, sign: 1 | -1): Component[] =>
    scaled(
      [
        limits('voltmeter gain', gain.limit, gain.id),
        limits('signal level', signal.limit, signal.id),
        limits('load', load.limit, load.id),
      ],
      sign * relativeToDb(1),
    );
  return quantity(0, 'dB', [...shared(a, 1), ...shared(b, -1)]).expandedUncertainty;
}

/**
 * Which of two sessions a single disagreement is more likely the fault of: the one whose reading stands
 * out more from its own neighbours (next steps, next frequencies). Undefined where neither clearly does.
 */
export function likelierAtFault(
  common: CommonPoint,
  a: readonly Point[],
  b: readonly Point[],
): 'a' | 'b' | undefined {
  const roughA = roughnessDb(common.a, a);
  const roughB = roughnessDb(common.b, b);
  if (roughA === undefined || roughB === undefined) return undefined;
  if (roughA > 2 * roughB && roughA > 0.1) return 'a';
  if (roughB > 2 * roughA && roughB > 0.1) return 'b';
  return undefined;
}

/**
 * How far a point lies off the mean of its two neighbours in step, or else in frequency, dB; where it has none,
 * how far its channel's level against the front is off what it is at the other points of that channel.
 */
function roughnessDb(point: Point, points: readonly Point[]): number | undefined {
  const level = ratioDb(point.voltsRms);
  const offLine = (line: readonly Point[], order: (one: Point) => number): number | undefined => {
    const sorted = line.filter((one) => one.voltsRms > 0).sort((x, y) => order(x) - order(y));
    const at = sorted.indexOf(point);
    const before = sorted[at - 1];
    const after = sorted[at + 1];
    if (!before || !after) return undefined;
    const t = (order(point) - order(before)) / (order(after) - order(before));
    return Math.abs(level - ((1 - t) * ratioDb(before.voltsRms) + t * ratioDb(after.voltsRms)));
  };
  const sameChannel = points.filter((one) => one.channel === point.channel);
  return (
    offLine(
      sameChannel.filter((one) => one.hz === point.hz),
      (one) => one.step,
    ) ??
    offLine(
      sameChannel.filter((one) => one.step === point.step),
      (one) => Math.log(one.hz),
    ) ??
    offBalanceDb(point, sameChannel, points)
  );
}

function offBalanceDb(
  point: Point,
  sameChannel: readonly Point[],
  points: readonly Point[],
): number | undefined {
  if (point.channel === frontChannel) return undefined;
  const balanceDb = (one: Point): number | undefined => {
    const front = points.find(
      ({ channel, step, hz }) => channel === frontChannel && step === one.step && hz === one.hz,
    );
    // A silent output reads nothing at times: the last digit is the most it can have been.
    const least = one.influences.resolutionVolts;
    return front && front.voltsRms > 0 ? ratioDb(Math.max(one.voltsRms, least) / front.voltsRms) : undefined;
  };
  const here = balanceDb(point);
  const others = sameChannel
    .flatMap((one) => (one === point ? [] : (balanceDb(one) ?? [])))
    .sort((x, y) => x - y);
  const usual = others[others.length >> 1];
  return here === undefined || usual === undefined || others.length < 2 ? undefined : Math.abs(here - usual);
}

function standardNormalQuantile(probability: number): number {
  return normalQuantileOf(probability, 0, 1);
}
