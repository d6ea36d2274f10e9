/** All that follows from a unit's measured outputs before a single reading is known. */
import type { Channel } from '../../../schemas/index.ts';
import { dbv, nominalOf, type ProfileOutput, referenceHz } from '../../measure/index.ts';
import {
  allowancesAlike,
  knownLevelDb,
  mostPlannedVolts,
  plannedHz,
  strangerPrior,
  unknownLevelDb,
} from './constants.ts';
import type { Hypothesis } from './hypothesis.ts';
import { type Prediction, predictorOf } from './predict.ts';
import { isRear, type ReadingPoint } from './reading.ts';
import { strangers } from './stranger.ts';
import { groupTwins } from './twins.ts';

/** A head-unit family as far as it was measured. */
export interface MeasuredUnit {
  readonly channels: readonly Channel[];
  /** All its profiles, measured or not, in the order they are to be listed in when equally probable. */
  readonly profiles: readonly { readonly id: string; readonly output: ProfileOutput | undefined }[];
}

/** Profiles that cannot be told apart by measuring; a group of one is the usual case. */
export interface Group extends Hypothesis {
  /** The prediction is that of the first: the others' differ by less than can be told. */
  readonly profiles: readonly string[];
}

/** A reading that may be asked for, and what groups and strangers, in this order, say of it. */
export interface PlannedReading extends ReadingPoint {
  readonly predictions: readonly Prediction[];
}

export interface IdentifyModel {
  readonly groups: readonly Group[];
  /** Profiles nobody has measured: they count as none of those known. */
  readonly unmeasured: readonly string[];
  /** None of those known. */
  readonly strangers: readonly Hypothesis[];
  /** Where every profile is known, not too loud, and clean even if the tone is a standard deviation louder. */
  readonly planned: readonly PlannedReading[];
}

/**
 * Builds the model. The prior is uniform over profiles, except for `strangerPrior` that it is none of them;
 * the share of profiles that were not measured goes there as well.
 */
export function modelOf(unit: MeasuredUnit, levelKnown: boolean): IdentifyModel {
  const offsetDb = levelKnown ? knownLevelDb : unknownLevelDb;
  const predicted = unit.profiles.flatMap(({ id, output }) => {
    const predict = output && predictorOf(output, offsetDb);
    return output && predict ? [{ profile: id, predict, output }] : [];
  });
  const outputs = predicted.map((one) => one.output);
  const points = pointsToPlan(unit.channels, outputs);
  const share = (1 - strangerPrior) / unit.profiles.length;
  const groups = groupTwins(predicted, points).map((twins): Group => {
    const [first] = twins;
    if (!first) throw new Error('a group of twins has a first');
    return {
      profiles: twins.map((one) => one.profile),
      prior: share * twins.length,
      predict: first.predict,
      offsetDb,
      alike: allowancesAlike,
    };
  });
  const known = predicted.map((one) => one.profile);
  const unmeasured = unit.profiles.map((one) => one.id).filter((id) => !known.includes(id));
  const none = strangers(
    strangerPrior + share * unmeasured.length,
    groups.map((group) => group.predict),
    unit.channels.some(isRear),
  );
  const hypotheses = [...groups, ...none];
  return {
    groups,
    unmeasured,
    strangers: none,
    planned: points.flatMap((point): PlannedReading[] => {
      const predictions = hypotheses.flatMap((one) => one.predict(point) ?? []);
      const usable =
        predictions.length === hypotheses.length &&
        predictions.every((one) => isBearable(one) && one.headroomDb >= offsetDb);
      return usable ? [{ ...point, predictions }] : [];
    }),
  };
}

function isBearable({ levelDbv }: Prediction): boolean {
  return levelDbv <= dbv(mostPlannedVolts);
}

/** Every step measured × the planned frequencies that were measured × one front and one rear output. */
function pointsToPlan(channels: readonly Channel[], outputs: readonly ProfileOutput[]): ReadingPoint[] {
  const steps = [...new Set(outputs.flatMap((output) => output.levelByStep.map((level) => level.step)))].sort(
    (a, b) => a - b,
  );
  const measured = new Set([
    referenceHz,
    ...outputs.flatMap((output) =>
      output.responses.flatMap((curve) => curve.points.map((point) => nominalOf(point.hz))),
    ),
  ]);
  const rear = channels.find(isRear);
  const ends: Channel[] = ['FL', ...(rear ? [rear] : [])];
  return steps.flatMap((step) =>
    ends.flatMap((channel) =>
      plannedHz.filter((hz) => measured.has(hz)).map((hz): ReadingPoint => ({ channel, step, hz })),
    ),
  );
}
