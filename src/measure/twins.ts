/** Profiles whose whole measured output is the same, whatever they are called. */
import { normalisedErrorLimit } from './agreement.ts';
import { linear } from './combine.ts';
import { ratioDb, relativeToDb } from './level.ts';
import { propagate } from './propagate.ts';
import type { ProfileOutput, Quantity } from './quantity.ts';

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

/** Fewer values in common than this do not show that two outputs are the same. */
export const leastCompared = 20;

/**
 * Compares two outputs value by value: level at each step, response at each step and frequency, rear to
 * front, silent outputs. What the two share, such as the voltmeter of a common session, cancels from the
 * uncertainty of their difference.
 */
export function compareOutputs(a: ProfileOutput, b: ProfileOutput): OutputComparison {
  const pairs = commonValues(a, b);
  if (pairs.length === 0) return { compared: 0, apart: Number.POSITIVE_INFINITY, where: 'nothing in common' };
  if ([...a.mutedChannels].sort().join() !== [...b.mutedChannels].sort().join()) {
    return { compared: pairs.length, apart: Number.POSITIVE_INFINITY, where: 'silent outputs' };
  }
  const limit = normalisedErrorLimit(pairs.length);
  let worst = { apart: 0, where: '' };
  for (const { first, second, where } of pairs) {
    const difference = linear([
      [1, first],
      [-1, second],
    ]);
    const apart = Math.abs(difference.value) / Math.max(difference.expandedUncertainty, leastTold) / limit;
    if (apart > worst.apart) worst = { apart, where };
  }
  return { compared: pairs.length, ...worst };
}

/** Differences below this, dB, are not told whatever the uncertainty says: common practice, no source. */
const leastTold = 0.02;

interface CommonValue {
  readonly first: Quantity;
  readonly second: Quantity;
  readonly where: string;
}

function commonValues(a: ProfileOutput, b: ProfileOutput): CommonValue[] {
  if (!a.conditions || !b.conditions) return [];
  const sameLoad = Math.abs(a.conditions.loadOhms / b.conditions.loadOhms - 1) <= 0.1;
  const sameSupply = Math.abs(a.conditions.supplyVolts - b.conditions.supplyVolts) <= 0.5;
  if (!sameLoad || !sameSupply) return [];
  const values: CommonValue[] = [];
  const levelsOfB = new Map(b.levelByStep.map((one) => [one.step, one]));
  for (const { step, volts, clean } of a.levelByStep) {
    const other = levelsOfB.get(step);
    // Past the clean region the supply of the day decides; a silent step is noise.
    if (!other || !clean || !other.clean || volts.value === 0 || other.volts.value === 0) continue;
    values.push({ first: asDb(volts), second: asDb(other.volts), where: `level at step ${step}` });
  }
  for (const { step, points } of a.responses) {
    const other = b.responses.find((one) => one.step === step);
    const byHz = new Map(other?.points.map((one) => [one.hz, one.level]));
    for (const { hz, level } of points) {
      const second = byHz.get(hz);
      if (second)
        values.push({ first: level, second, where: `response at step ${step}, ${Math.round(hz)} Hz` });
    }
  }
  const rear = (output: ProfileOutput) => output.characteristics.find((one) => one.name === 'rear-to-front');
  const [rearA, rearB] = [rear(a), rear(b)];
  if (rearA?.bound === 'exact' && rearB?.bound === 'exact') {
    values.push({ first: rearA, second: rearB, where: 'rear to front' });
  }
  return values;
}

/** Volts as dBV. */
function asDb(volts: Quantity): Quantity {
  return propagate(ratioDb(volts.value), 'dB', [[relativeToDb(1) / volts.value, volts]]);
}

/** Profiles of one family that put out the same, and how far the nearest of the others are. */
export interface OutputGroups {
  /** Every pair in a group agrees. Profiles alone in theirs are left out. */
  readonly groups: readonly { readonly profiles: readonly string[]; readonly apart: number }[];
  /** The two groups (or single profiles) nearest to each other, and the comparison of their nearest pair. */
  readonly nearest:
    | { readonly profiles: readonly [string, string]; readonly apart: number; readonly where: string }
    | undefined;
}

/**
 * Groups outputs so that every pair in a group agrees (complete linkage): the two nearest groups are joined
 * while even their farthest pair agrees. Outputs with too little in common are never joined.
 */
export function groupOutputs(outputs: readonly ProfileOutput[]): OutputGroups {
  const key = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);
  const pairs = new Map<string, OutputComparison>();
  outputs.forEach((a, index) => {
    for (const b of outputs.slice(index + 1)) {
      pairs.set(key(a.profile, b.profile), compareOutputs(a, b));
    }
  });
  const apartOf = (a: string, b: string): number => {
    const pair = pairs.get(key(a, b));
    return pair && pair.compared >= leastCompared ? pair.apart : Number.POSITIVE_INFINITY;
  };
  let clusters = outputs.map((one) => [one.profile]);
  const linkage = (a: readonly string[], b: readonly string[]): number =>
    Math.max(...a.flatMap((one) => b.map((other) => apartOf(one, other))));
  while (true) {
    let best: { i: number; j: number; apart: number } | undefined;
    for (let i = 0; i < clusters.length; i += 1) {
      for (let j = i + 1; j < clusters.length; j += 1) {
        const apart = linkage(clusters[i] ?? [], clusters[j] ?? []);
        if (apart <= 1 && (!best || apart < best.apart)) best = { i, j, apart };
      }
    }
    if (!best) break;
    const { i, j } = best;
    const joined = [...(clusters[i] ?? []), ...(clusters[j] ?? [])];
    clusters = [...clusters.filter((_, index) => index !== i && index !== j), joined];
  }
  return {
    groups: clusters
      .filter((cluster) => cluster.length > 1)
      .map((profiles) => ({
        profiles: [...profiles].sort(),
        apart: Math.max(
          ...profiles.flatMap((a) => profiles.filter((b) => b !== a).map((b) => apartOf(a, b))),
        ),
      })),
    nearest: nearestOf(clusters, apartOf, (a, b) => pairs.get(key(a, b))?.where ?? ''),
  };
}

function nearestOf(
  clusters: readonly (readonly string[])[],
  apartOf: (a: string, b: string) => number,
  whereOf: (a: string, b: string) => string,
): OutputGroups['nearest'] {
  let nearest: OutputGroups['nearest'];
  clusters.forEach((cluster, index) => {
    for (const other of clusters.slice(index + 1)) {
      for (const a of cluster) {
        for (const b of other) {
          const apart = apartOf(a, b);
          if (Number.isFinite(apart) && (!nearest || apart < nearest.apart)) {
            nearest = { profiles: [a, b], apart, where: whereOf(a, b) };
          }
        }
      }
    }
  });
  return nearest;
}
