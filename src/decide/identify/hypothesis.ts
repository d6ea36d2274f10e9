/** One way the readings may have come about: a profile known here, or one that is not. */
import type { Joint } from './gaussian.ts';
import type { Prediction, Predictor } from './predict.ts';
import { isRear, type ReadingPoint } from './reading.ts';

export interface Hypothesis {
  /** Probability before any reading. */
  readonly prior: number;
  readonly predict: Predictor;
  /** Standard deviation of the offset all levels share, dB: the tone's, and what is not known of the level. */
  readonly offsetDb: number;
  /** How soon the allowances of two points lose touch. */
  readonly alike: Alikeness;
}

/** Allowances are alike at points near each other: by steps, by octaves, and between front and rear. */
export interface Alikeness {
  readonly steps: number;
  readonly octaves: number;
  readonly frontToRear: number;
}

/** A point with what a hypothesis says of it and how well it is read. */
export interface Expected extends ReadingPoint {
  readonly prediction: Prediction;
  /** Standard uncertainty of the reading, dB. */
  readonly uncertaintyDb: number;
}

/**
 * The joint distribution of the levels at several points, dBV. A level is y = level + a·δ + allowance + ε with
 * the offset δ normal about 0; integrated over δ the levels are jointly normal, their covariance
 * σ²·a·aᵀ + allowances + diag(u²) (Gaussian marginals: Bishop, Pattern Recognition and Machine Learning, 2006,
 * 2.3.3; from memory).
 */
export function jointOf(hypothesis: Hypothesis, points: readonly Expected[]): Joint {
  return {
    mean: points.map((one) => one.prediction.levelDbv),
    covariance: points.map((one, i) =>
      points.map((other, j) => covarianceOf(hypothesis, one, other) + (i === j ? ownVariance(one) : 0)),
    ),
  };
}

/** What the levels at two points share, dB²: the offset, and allowances where they are near. */
export function covarianceOf({ offsetDb, alike }: Hypothesis, a: Expected, b: Expected): number {
  const offset = offsetDb ** 2 * a.prediction.perOffset * b.prediction.perOffset;
  return offset + a.prediction.allowanceDb * b.prediction.allowanceDb * correlation(alike, a, b);
}

/** The variance that is a point's own, dB². */
export function ownVariance({ prediction, uncertaintyDb }: Expected): number {
  return prediction.ownDb ** 2 + uncertaintyDb ** 2;
}

/** A product of kernels that are each positive definite, so that it is too. */
function correlation(alike: Alikeness, a: ReadingPoint, b: ReadingPoint): number {
  const steps = Math.abs(a.step - b.step) / alike.steps;
  const octaves = Math.abs(Math.log2(a.hz / b.hz)) / alike.octaves;
  const ends = isRear(a.channel) === isRear(b.channel) ? 1 : alike.frontToRear;
  return ends * Math.exp(-steps - octaves);
}
