/** A profile that is none of those known, as hypotheses to hold the known ones against. */
import { ratioDb } from '../../measure/index.ts';
import { plausibleVolts, strangerAlike, strangerDepartureDb, strangerRearSilent } from './constants.ts';
import type { Hypothesis } from './hypothesis.ts';
import { type Predictor, silentPrediction } from './predict.ts';
import { isRear, type ReadingPoint } from './reading.ts';

/** Standard deviation of a level that is log-uniform over the plausible volts, dB: their range over √12. */
const strangerLevelDb = ratioDb(plausibleVolts[1] / plausibleVolts[0]) / Math.sqrt(12);

/**
 * Two hypotheses, rear outputs playing and silent, that share `prior`.
 *
 * A stranger may put out any plausible volts, but it is a head unit all the same. Its level is as good as
 * log-uniform over the plausible volts (a normal distribution of the same width, so that all stays Gaussian);
 * the way that level goes with step and tone departs from the mean of the known profiles by some decibels,
 * alike at points near each other. Were every reading log-uniform by itself, each further one would count
 * against a stranger whatever it showed, and another unit would soon be taken for the nearest profile.
 */
export function strangers(prior: number, known: readonly Predictor[], hasRear: boolean): Hypothesis[] {
  const playing: Predictor = (point) => departing(point, known);
  const silentRear: Predictor = (point) => (isRear(point.channel) ? silentPrediction : playing(point));
  const shared = { offsetDb: strangerLevelDb, alike: strangerAlike };
  if (!hasRear) return [{ ...shared, prior, predict: playing }];
  return [
    { ...shared, prior: prior * (1 - strangerRearSilent), predict: playing },
    { ...shared, prior: prior * strangerRearSilent, predict: silentRear },
  ];
}

/** The mean level of the known profiles that play at a point; for a rear where none does, that of the front. */
function departing(point: ReadingPoint, known: readonly Predictor[]): ReturnType<Predictor> {
  const predictions = known.flatMap((predict) => predict(point) ?? []);
  if (predictions.length === 0) return undefined;
  const playing = predictions.filter((one) => one.perOffset > 0);
  if (playing.length === 0) {
    return isRear(point.channel) ? departing({ ...point, channel: 'FL' }, known) : silentPrediction;
  }
  return {
    levelDbv: playing.reduce((sum, one) => sum + one.levelDbv, 0) / playing.length,
    perOffset: 1,
    ownDb: 0,
    allowanceDb: strangerDepartureDb,
    headroomDb: Number.POSITIVE_INFINITY,
  };
}
