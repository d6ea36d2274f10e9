/** Where a profile stops getting louder: its output level over what a limitless one would put out. */
import { dbv, type LevelAtStep } from '../../measure/index.ts';

/** Output level over drive at 1 kHz. Drive is the level the clean steps point to, dBV for a full-scale tone. */
export interface LimitCurve {
  /** Drive at each measured step, in their order. */
  readonly driveDbv: readonly number[];
  /** The highest level known to be clean, dBV: up to here output equals drive. */
  readonly cleanDbv: number;
  /** Output above that, by rising drive; empty where no step was seen to clip. */
  readonly clipped: readonly { readonly driveDbv: number; readonly levelDbv: number }[];
}

/** The law of the clean steps is carried on from this many of the last increments. */
const lawSteps = 3;

/**
 * The limit curve of the steps of one profile, lowest first, all with volts above zero. Where no step is
 * marked clean, none can be told to clip: output then equals drive throughout.
 */
export function limitCurve(steps: readonly LevelAtStep[]): LimitCurve {
  const levels = steps.map((one) => dbv(one.volts.value));
  const last = steps.findLastIndex((one) => one.clean);
  const top = last === -1 ? steps.length - 1 : last;
  const cleanDbv = levels[top] ?? Number.NEGATIVE_INFINITY;
  const from = Math.max(0, top - lawSteps);
  const rise = (steps[top]?.step ?? 0) - (steps[from]?.step ?? 0);
  const perStep = rise === 0 ? 0 : (cleanDbv - (levels[from] ?? cleanDbv)) / rise;
  const driveDbv = steps.map(({ step }, index) =>
    index <= top ? (levels[index] ?? 0) : cleanDbv + perStep * (step - (steps[top]?.step ?? step)),
  );
  const clipped = steps.flatMap((_, index) =>
    index > top ? [{ driveDbv: driveDbv[index] ?? 0, levelDbv: levels[index] ?? 0 }] : [],
  );
  return { driveDbv, cleanDbv, clipped };
}

/** Output level for a drive, dBV, and the standard uncertainty of not knowing the curve there, dB. */
export function outputLevel(curve: LimitCurve, driveDbv: number): { levelDbv: number; unknownDb: number } {
  const over = driveDbv - curve.cleanDbv;
  if (over <= 0) return { levelDbv: driveDbv, unknownDb: 0 };
  const last = curve.clipped.at(-1);
  // Never seen to clip: anything between going on as before and not at all.
  if (!last) return { levelDbv: curve.cleanDbv + over / 2, unknownDb: over / 2 / Math.sqrt(3) };
  let before = { driveDbv: curve.cleanDbv, levelDbv: curve.cleanDbv };
  for (const point of curve.clipped) {
    const slope = slopeBetween(before, point);
    if (driveDbv <= point.driveDbv || point === last) {
      return { levelDbv: before.levelDbv + slope * (driveDbv - before.driveDbv), unknownDb: 0 };
    }
    before = point;
  }
  return { levelDbv: last.levelDbv, unknownDb: 0 };
}

/** Output never falls with drive, nor rises faster than it. */
function slopeBetween(
  a: { driveDbv: number; levelDbv: number },
  b: { driveDbv: number; levelDbv: number },
): number {
  const run = b.driveDbv - a.driveDbv;
  return run <= 0 ? 0 : Math.min(1, Math.max(0, (b.levelDbv - a.levelDbv) / run));
}

/** A level that follows the tone's offset on a straight line: level = levelDbv + perOffset·offset ± residual. */
export interface Linearised {
  readonly levelDbv: number;
  /** dB of output for each dB the tone is louder: 1 while clean, less where it clips. */
  readonly perOffset: number;
  /** Standard deviation about the line, dB. */
  readonly residualDb: number;
}

/** Offsets, in standard deviations, that the line is fitted over. */
const nodes = Array.from({ length: 25 }, (_, index) => (index - 12) / 3);
const weights = nodes.map((z) => Math.exp(-(z ** 2) / 2));
const weightSum = weights.reduce((sum, one) => sum + one, 0);

/**
 * The best straight line for the level over an offset that is normal about 0 with standard deviation
 * `offsetDb`: regression under the prior, known as statistical linearisation. It is exact while the output
 * stays clean, and keeps the offset's integral a Gaussian one where it does not.
 */
export function linearise(curve: LimitCurve, driveDbv: number, offsetDb: number): Linearised {
  if (driveDbv + 4 * offsetDb <= curve.cleanDbv) return { levelDbv: driveDbv, perOffset: 1, residualDb: 0 };
  let mean = 0;
  let covariance = 0;
  let unknown = 0;
  const levels = nodes.map((z) => outputLevel(curve, driveDbv + offsetDb * z));
  nodes.forEach((z, index) => {
    const weight = (weights[index] ?? 0) / weightSum;
    mean += weight * (levels[index]?.levelDbv ?? 0);
    covariance += weight * z * (levels[index]?.levelDbv ?? 0);
    unknown += weight * (levels[index]?.unknownDb ?? 0) ** 2;
  });
  let variance = unknown;
  let spread = 0;
  nodes.forEach((z, index) => {
    const weight = (weights[index] ?? 0) / weightSum;
    spread += weight * z ** 2;
  });
  const perSigma = covariance / spread;
  nodes.forEach((z, index) => {
    const weight = (weights[index] ?? 0) / weightSum;
    variance += weight * ((levels[index]?.levelDbv ?? 0) - mean - perSigma * z) ** 2;
  });
  return { levelDbv: mean, perOffset: perSigma / offsetDb, residualDb: Math.sqrt(variance) };
}
