/** The highest volume step that plays clean. */
import { cleanCompressionDb, cleanThdPercent, hardClipOverdriveDb, hardClipThd } from './distortion.ts';
import { dbRatio, ratioDb } from './level.ts';
import type { Point } from './point.ts';

export interface CleanStep {
  /** The highest step up to which every measured step is clean. */
  readonly step: number;
  /** The lowest and highest step it may be within the uncertainty of the THD readings. */
  readonly lowest: number;
  readonly highest: number;
  /** The first step measured that is not clean; infinite where the limit was not reached. */
  readonly uncleanAt: number;
  /** The lowest step that may be that one, within the uncertainty of the THD readings. */
  readonly uncleanAtLeast: number;
  /** Readings that decide it: at the step, and at the first one that is not clean. */
  readonly readings: readonly string[];
}

/**
 * The highest clean step of one session's points at 1 kHz on one channel, given by rising step: THD at most 1 % (CTA-2006), or,
 * where a point has no THD, less than 0.3 dB short of the level law of the steps below (AES17).
 * Undefined where fewer than two steps were measured or the lowest is already not clean.
 */
export function highestCleanStep(byStep: readonly Point[]): CleanStep | undefined {
  if (byStep.length < 2) return undefined;
  const isRated = byStep.every((point) => point.thdPercent !== null);
  const compression = isRated ? [] : compressionByStep(byStep);
  const lastClean = (isClean: (point: Point, index: number) => boolean): number => {
    const firstUnclean = byStep.findIndex((point, index) => !isClean(point, index));
    return firstUnclean === -1 ? byStep.length - 1 : firstUnclean - 1;
  };
  /** sense 1: everything unknown pushes towards clipping; −1: away from it; 0: as read. */
  const judge = (sense: -1 | 0 | 1) => (point: Point, index: number) => {
    if (point.thdPercent === null) return (compression[index] ?? 0) <= cleanCompressionDb;
    const thdPercent = point.thdPercent / (1 - sense * point.thdRelativeLimit);
    return isClean(thdPercent, sense * point.driveToleranceDb) || isNoiseLimited(point, byStep, sense);
  };

  const at = lastClean(judge(0));
  const point = byStep[at];
  if (!point) return undefined;
  const least = lastClean(judge(1));
  return {
    step: point.step,
    lowest: byStep[least]?.step ?? point.step,
    highest: byStep[lastClean(judge(-1))]?.step ?? point.step,
    uncleanAt: byStep[at + 1]?.step ?? Number.POSITIVE_INFINITY,
    uncleanAtLeast: byStep[least + 1]?.step ?? Number.POSITIVE_INFINITY,
    readings: [...point.readings, ...(byStep[at + 1]?.readings ?? [])],
  };
}

/** Overdrive of an ideal hard clip at the clean limit, dB. */
const limitOverdriveDb = hardClipOverdriveDb(cleanThdPercent / 100);

/**
 * Whether a THD is within the limit after the drive has moved by `driveDb`, by the slope of an ideal hard
 * clip: the limit itself is moved back by as much instead. Without a move it is the plain comparison.
 */
function isClean(thdPercent: number, driveDb: number): boolean {
  return thdPercent <= (driveDb === 0 ? cleanThdPercent : movedLimitPercent(driveDb));
}

/** Limits already moved: a base knows few tolerances. */
const movedLimits = new Map<number, number>();

function movedLimitPercent(driveDb: number): number {
  const known = movedLimits.get(driveDb);
  if (known !== undefined) return known;
  const overdriveDb = Math.max(0, limitOverdriveDb - driveDb);
  const limit = 100 * hardClipThd(10 ** (-overdriveDb / 20));
  movedLimits.set(driveDb, limit);
  return limit;
}

/**
 * True for a quiet point whose THD figure is the noise of the unit, not its distortion: what is left beside
 * the fundamental would pass as clean at a louder step that itself reads clean, louder by more than the drive
 * may be off.
 */
function isNoiseLimited(point: Point, byStep: readonly Point[], sense: -1 | 0 | 1): boolean {
  const residueVolts = ((point.thdPercent ?? 0) / 100) * point.voltsRms;
  const driven = point.voltsRms * dbRatio(Math.max(0, sense * point.driveToleranceDb));
  return byStep.some(
    (louder) =>
      louder.voltsRms > driven &&
      louder.thdPercent !== null &&
      louder.thdPercent / (1 - sense * louder.thdRelativeLimit) <= cleanThdPercent &&
      residueVolts <= (louder.thdPercent / 100) * louder.voltsRms,
  );
}

/** The increment of the level law is taken from this many steps below; fewer do not make a law. */
const lawSteps = 3;

/**
 * How far each step falls short of where the steps below it point, dB. The law is carried on from the last
 * steps that kept to it, by their median increment, so that slow compression is not taken for the law.
 */
function compressionByStep(byStep: readonly Point[]): number[] {
  let expectedDb: number | undefined;
  let last: Point | undefined;
  let increments: number[] = [];
  return byStep.map((point) => {
    const levelDb = ratioDb(point.voltsRms);
    if (!last || expectedDb === undefined) {
      expectedDb = levelDb;
      last = point;
      return 0;
    }
    const steps = point.step - last.step;
    const increment = (levelDb - ratioDb(last.voltsRms)) / steps;
    const predicted: number =
      increments.length < lawSteps ? levelDb : expectedDb + median(increments) * steps;
    const short = Math.max(0, predicted - levelDb);
    if (short <= cleanCompressionDb / 3) {
      expectedDb = levelDb;
      increments = [...increments, increment].slice(-lawSteps);
    } else expectedDb = predicted;
    last = point;
    return short;
  });
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}
