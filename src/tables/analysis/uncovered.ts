/**
 * Is there a value in a cube that none of some others holds? This is satisfiability with several values a variable: each
 * cube left out is a clause. Solved as Davis, Logemann and Loveland do (CACM 5:394, 1962): what follows from one cube
 * alone is drawn first, then the most constraining cube is split on.
 */
import type { Budget } from './budget.ts';
import { type Cube, isEmpty, type Space } from './space.ts';

/**
 * A cube within `cube` no value of which is in any of `others`; undefined where together they cover it all.
 * @throws OutOfSteps
 */
export function uncovered(
  space: Space,
  cube: Cube,
  others: readonly Cube[],
  budget: Budget,
): Cube | undefined {
  return isEmpty(space, cube) ? undefined : search(space.starts, cube.slice(), others, budget);
}

/** Changes `domain`, which has a value of every input. */
function search(
  starts: readonly number[],
  domain: Cube,
  others: readonly Cube[],
  budget: Budget,
): Cube | undefined {
  const inputs = starts.length - 1;
  /** How much hangs on each input: rules it can still rule out, those that leave little choice counting more. */
  const weights = new Float64Array(inputs);
  let active = others;
  let split: Cube | undefined;
  let settled = false;
  while (!settled) {
    settled = true;
    weights.fill(0);
    let fewest = Number.POSITIVE_INFINITY;
    const left: Cube[] = [];
    budget.take(active.length + 1);
    for (const other of active) {
      const { length, last } = missedAlong(starts, domain, other);
      if (length < 0) continue;
      if (length === 0) return undefined;
      if (length === 1) {
        cut(starts, domain, other, last, false);
        settled = false;
        continue;
      }
      left.push(other);
      if (length < fewest) {
        fewest = length;
        split = other;
      }
      for (let index = 0; index < length; index += 1) {
        const input = missed[index] ?? 0;
        weights[input] = (weights[input] ?? 0) + 2 ** -length;
      }
    }
    active = left;
  }
  if (active.length === 0 || !split) return domain;
  const { length } = missedAlong(starts, domain, split);
  let along = missed[0] ?? 0;
  for (let index = 1; index < length; index += 1) {
    const input = missed[index] ?? 0;
    if ((weights[input] ?? 0) > (weights[along] ?? 0)) along = input;
  }
  const outside = cut(starts, domain.slice(), split, along, false);
  return (
    search(starts, outside, active, budget) ??
    search(starts, cut(starts, domain, split, along, true), active, budget)
  );
}

/** The inputs `missedAlong` found last: one array for all, for it is the innermost loop. */
const missed: number[] = [];

/** Along how many inputs `domain` has values that `other` has not; −1 where they have nothing in common. */
function missedAlong(
  starts: readonly number[],
  domain: Cube,
  other: Cube,
): { readonly length: number; readonly last: number } {
  let length = 0;
  let last = 0;
  for (let input = 0; input + 1 < starts.length; input += 1) {
    const end = starts[input + 1] as number;
    let [inside, outside] = [0, 0];
    for (let word = starts[input] as number; word < end; word += 1) {
      const mine = domain[word] as number;
      const theirs = other[word] as number;
      inside |= mine & theirs;
      outside |= mine & ~theirs;
    }
    if (inside === 0) return { length: -1, last };
    if (outside === 0) continue;
    missed[length] = input;
    length += 1;
    last = input;
  }
  return { length, last };
}

/** Leaves of `domain` along one input what is in `other`, or what is not. Changes and gives `domain`. */
function cut(starts: readonly number[], domain: Cube, other: Cube, input: number, inside: boolean): Cube {
  const end = starts[input + 1] ?? 0;
  for (let word = starts[input] ?? 0; word < end; word += 1) {
    const theirs = other[word] ?? 0;
    domain[word] = ((domain[word] ?? 0) & (inside ? theirs : ~theirs)) >>> 0;
  }
  return domain;
}
