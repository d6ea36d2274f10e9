/** Which reading to take next: the one expected to tell most. */
import { dbRatio } from '../../measure/index.ts';
import { defaultAccuracyPercent, leastBits, leastReadings, plannedDigitVolts } from './constants.ts';
import { covarianceOf, type Expected, type Hypothesis, ownVariance } from './hypothesis.ts';
import { mutualInformationBits } from './information.ts';
import type { IdentifyModel, PlannedReading } from './model.ts';
import type { Judged, Posterior } from './posterior.ts';
import { isRear, type ReadingPoint, readingUncertaintyDb } from './reading.ts';

export interface NextReading extends ReadingPoint {
  /** Expected fall of the entropy over profiles and none of them, bits. */
  readonly expectedBits: number;
  /** What the meter is to show if it is one of these profiles, likeliest first. */
  readonly expect: readonly { readonly profiles: readonly string[]; readonly voltsRms: number }[];
}

/** The meter a next reading is taken with, as far as it is known. */
export interface Meter {
  /** Limit of error (±), per cent of the reading; the usual one for the frequency where absent. */
  readonly accuracyPercent?: number | undefined;
  /** The finest digit it has shown, volts. */
  readonly digitVolts?: number | undefined;
}

/** Groups less probable than this do not count in planning. */
const negligible = 1e-3;
/** Readings that tell less by no more than this are as good, bits. */
const asGoodBits = 0.01;
/** Groups less probable than this are not named in what to expect. */
const namedFrom = 0.02;

/**
 * The planned reading with the largest mutual information between profile and reading, given the readings so
 * far; undefined where none is worth {@link leastBits} and readings are enough to be sure. A point already read
 * is not asked for again. Of those within {@link asGoodBits} of the largest the one at the lowest step is
 * taken, because it is the quietest; then the front before the rear, then the lowest frequency.
 */
export function nextReading(
  model: IdentifyModel,
  posterior: Posterior,
  readings: readonly ReadingPoint[],
  meter: Meter = {},
): NextReading | undefined {
  const weighed = model.planned
    .filter((point) => !readings.some((one) => isSamePoint(one, point)))
    .map((point) => ({ point, bits: expectedBits(posterior, point, meter) }));
  const most = Math.max(0, ...weighed.map((one) => one.bits));
  if (most < leastBits && readings.length >= leastReadings) return undefined;
  const [best] = weighed
    .filter(({ bits }) => bits >= most - asGoodBits)
    .sort((a, b) => inOrder(a.point, b.point));
  if (!best) return undefined;
  const { point, bits } = best;
  return {
    channel: point.channel,
    step: point.step,
    hz: point.hz,
    expectedBits: bits,
    expect: posterior.groups
      .map((one, index) => ({ ...one, level: levelGiven(one, point, index, meter) }))
      .filter((one) => one.probability >= namedFrom)
      .sort((a, b) => b.probability - a.probability)
      .map(({ hypothesis, level }) => ({ profiles: hypothesis.profiles, voltsRms: dbRatio(level.mean) })),
  };
}

/** Mutual information between hypothesis and a planned reading, bits. */
export function expectedBits(posterior: Posterior, point: PlannedReading, meter: Meter): number {
  const components = [...posterior.groups, ...posterior.strangers].flatMap((one, index) => {
    if (one.probability < negligible) return [];
    const { mean, variance } = levelGiven(one, point, index, meter);
    return [{ probability: one.probability, mean, standardDeviation: Math.sqrt(variance) }];
  });
  return mutualInformationBits(components);
}

/** Mean and variance of a planned reading's level under one hypothesis, given the readings so far, dBV and dB². */
export function levelGiven(
  { hypothesis, expected, observed }: Judged<Hypothesis>,
  point: PlannedReading,
  index: number,
  { accuracyPercent = defaultAccuracyPercent(point.hz), digitVolts = 0 }: Meter,
): { readonly mean: number; readonly variance: number } {
  const prediction = point.predictions[index];
  if (!prediction) throw new RangeError('a planned reading has a prediction for every hypothesis');
  const voltsRms = dbRatio(prediction.levelDbv);
  const next: Expected = {
    channel: point.channel,
    step: point.step,
    hz: point.hz,
    prediction,
    uncertaintyDb: readingUncertaintyDb(
      voltsRms,
      accuracyPercent,
      Math.max(digitVolts, plannedDigitVolts(voltsRms)),
    ),
  };
  return observed.condition({
    mean: prediction.levelDbv,
    variance: covarianceOf(hypothesis, next, next) + ownVariance(next),
    covariances: expected.map((one) => covarianceOf(hypothesis, one, next)),
  });
}

function inOrder(a: ReadingPoint, b: ReadingPoint): number {
  return a.step - b.step || Number(isRear(a.channel)) - Number(isRear(b.channel)) || a.hz - b.hz;
}

function isSamePoint(a: ReadingPoint, b: ReadingPoint): boolean {
  return a.channel === b.channel && a.step === b.step && a.hz === b.hz;
}
