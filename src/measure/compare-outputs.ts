/** Two outputs held against each other, value by value. */
import { normalisedErrorLimit } from './agreement.ts';
import { linear } from './combine.ts';
import { ratioDb, relativeToDb } from './level.ts';
import { propagate } from './propagate.ts';
import type { LevelAtStep, ProfileOutput, Quantity, ResponseAtStep } from './quantity.ts';

/** How two outputs compare. */
export interface OutputComparison {
  /** How many values both have under like conditions. */
  readonly compared: number;
  /**
   * The greatest difference in units of its expanded uncertainty, over what chance allows for so many
   * comparisons: at most 1 where the outputs agree. Infinite where one is silent and the other plays.
   */
  readonly apart: number;
  /** Where they differ most, in words. */
  readonly where: string;
}

/** What an output is compared by: the same figures as in its whole description. */
export interface ComparableOutput
  extends Pick<ProfileOutput, 'profile' | 'conditions' | 'mutedChannels' | 'sessions'> {
  readonly levelByStep: readonly Pick<LevelAtStep, 'step' | 'volts' | 'clean'>[];
  readonly responses: readonly {
    readonly step: number;
    readonly points: readonly Pick<ResponseAtStep['points'][number], 'hz' | 'level'>[];
  }[];
  /** Rear relative to front at the highest clean step; undefined where it was not read, or is a bound. */
  readonly rearToFront: Quantity | undefined;
}

/** The values an output is compared by, dB, each under a key two outputs share where both have it. */
export interface ComparedValues {
  readonly output: ComparableOutput;
  readonly values: ReadonlyMap<string, Quantity>;
}

/**
 * Level at each clean step, response at each step and frequency, rear to front. Past the clean region the
 * supply of the day decides, and a silent step is noise: both are left out.
 */
export function comparedValues(output: ComparableOutput): ComparedValues {
  const values = new Map<string, Quantity>();
  for (const { step, volts, clean } of output.levelByStep) {
    if (clean && volts.value !== 0) values.set(`level ${step}`, asDb(volts));
  }
  for (const { step, points } of output.responses) {
    for (const { hz, level } of points) values.set(responseKey(step, hz), level);
  }
  if (output.rearToFront) values.set('rear', output.rearToFront);
  return { output, values };
}

/** Written out once by step and frequency: outputs are read at the same few of them. */
const responseKeys = new Map<number, Map<number, string>>();

function responseKey(step: number, hz: number): string {
  const ofStep = responseKeys.get(step) ?? new Map<number, string>();
  responseKeys.set(step, ofStep);
  const known = ofStep.get(hz);
  if (known !== undefined) return known;
  const key = `response ${step} ${hz}`;
  ofStep.set(hz, key);
  return key;
}

/** Where the value under a key stands, in words. */
function whereIs(key: string): string {
  const [what, step, hz] = key.split(' ');
  if (what === 'rear') return 'rear to front';
  return what === 'level'
    ? `level at step ${step}`
    : `response at step ${step}, ${Math.round(Number(hz))} Hz`;
}

/** Volts as dBV. */
function asDb(volts: Quantity): Quantity {
  return propagate(ratioDb(volts.value), 'dB', [[relativeToDb(1) / volts.value, volts]]);
}

/**
 * Compares two outputs value by value. What outputs of the same sessions share, such as the voltmeter's gain,
 * cancels from the uncertainty of their difference.
 */
export function compareOutputs(a: ComparableOutput, b: ComparableOutput): OutputComparison {
  return compareValues(comparedValues(a), comparedValues(b));
}

/** As {@link compareOutputs}, for outputs whose values are at hand. */
export function compareValues(a: ComparedValues, b: ComparedValues): OutputComparison {
  const common = areUnderLikeConditions(a.output, b.output)
    ? [...a.values].flatMap(([key, first]) => {
        const second = b.values.get(key);
        return second ? [{ key, first, second }] : [];
      })
    : [];
  const compared = common.length;
  if (compared === 0) return { compared, apart: Number.POSITIVE_INFINITY, where: 'nothing in common' };
  if (silent(a) !== silent(b)) {
    return { compared, apart: Number.POSITIVE_INFINITY, where: 'silent outputs' };
  }
  const limit = normalisedErrorLimit(compared);
  const together = ofSameSessions(a.output, b.output);
  let worst = { apart: 0, key: '' };
  for (const { key, first, second } of common) {
    const apart = apartBy(first, second, limit, together);
    if (apart > worst.apart) worst = { apart, key };
  }
  return { compared, apart: worst.apart, where: worst.key === '' ? '' : whereIs(worst.key) };
}

/**
 * The difference of two values in units of its expanded uncertainty, over the limit for so many comparisons.
 * What the two share cancels only where they were read `together`, in the same sessions: from one session to
 * another a voltmeter's gain drifts anywhere within its specification, which holds over a year and a range of
 * temperatures.
 */
export function apartBy(first: Quantity, second: Quantity, limit: number, together: boolean): number {
  const uncertainty = together
    ? linear([
        [1, first],
        [-1, second],
      ]).expandedUncertainty
    : Math.hypot(first.expandedUncertainty, second.expandedUncertainty);
  return Math.abs(first.value - second.value) / Math.max(uncertainty, leastTold) / limit;
}

/** Whether two outputs were read in the same sessions. */
export function ofSameSessions(a: ComparableOutput, b: ComparableOutput): boolean {
  return a.sessions.length === b.sessions.length && a.sessions.every((one) => b.sessions.includes(one));
}

/** Differences below this, dB, are not told whatever the uncertainty says: common practice, no source. */
export const leastTold = 0.02;

export function areUnderLikeConditions(a: ComparableOutput, b: ComparableOutput): boolean {
  if (!a.conditions || !b.conditions) return false;
  const sameLoad = Math.abs(a.conditions.loadOhms / b.conditions.loadOhms - 1) <= 0.1;
  const sameSupply = Math.abs(a.conditions.supplyVolts - b.conditions.supplyVolts) <= 0.5;
  return sameLoad && sameSupply;
}

function silent({ output }: ComparedValues): string {
  return [...output.mutedChannels].sort().join();
}
