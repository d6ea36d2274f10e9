/** How well the sessions that measured one level under like conditions agree, and which of them do. */
import {
  betweenBenchDeviation,
  birgeRatio,
  consistencyTest,
  largestConsistentSubset,
  leastProbability,
  mostForSubset,
  normalisedError,
} from './consistency.ts';
import { pointVolts } from './from-points.ts';
import type { Group } from './group.ts';
import type { Quantity, SessionAgreement } from './quantity.ts';

/** Compares the sessions at `step`; undefined where fewer than two read it. */
export function sessionAgreement(group: Group, step: number): SessionAgreement | undefined {
  const read = group.allSessions.flatMap(({ run, scale }) => {
    const point = scale.find((one) => one.step === step);
    return point ? [{ session: run.session, volts: pointVolts(point) }] : [];
  });
  const volts = read.map((one) => one.volts);
  if (volts.length < 2 || volts.some((one) => one.standardUncertainty === 0)) return undefined;
  const test = consistencyTest(volts);
  const consistent = test.probability >= leastProbability;
  return {
    sessions: read.map((one) => one.session),
    step,
    largestNormalisedError: largestNormalisedError(volts),
    test,
    birgeRatio: birgeRatio(test),
    consistent,
    agreeing: agreeingOf(volts).flatMap((index) => read[index]?.session ?? []),
    betweenBenchVolts: consistent ? 0 : betweenBenchDeviation(volts),
  };
}

/** The places of the values that agree; all of more than can be enumerated. */
export function agreeingOf(values: readonly Quantity[]): number[] {
  return values.length > mostForSubset ? values.map((_, index) => index) : largestConsistentSubset(values);
}

function largestNormalisedError(values: readonly Quantity[]): number {
  const errors = values.flatMap((a, index) =>
    values.slice(index + 1).map((b) => Math.abs(normalisedError(a, b))),
  );
  return Math.max(...errors);
}
