/** How far a step is from the start and from the active code, as far as that can be known. */
import type { Sequence } from '../../schemas/index.ts';
import { orList, phrase } from '../words/index.ts';

export interface Progress {
  /** The step's number counted from the start. */
  readonly number: number;
  /** How many steps there are in all, by each way on; empty where the ways go round in circles. */
  readonly totals: readonly number[];
}

type Transition = Sequence['transitions'][number];

/** Undefined where ways of different lengths lead to the step. */
export function progressOf(sequence: Sequence, transition: Transition): Progress | undefined {
  const before = lengths(sequence, sequence.start, (id) => id === transition.from);
  const [taken] = before;
  if (taken === undefined || before.length > 1) return undefined;
  const codes = new Set(
    sequence.states.filter((state) => state.shows === 'active-code').map((state) => state.id),
  );
  const after = lengths(sequence, transition.to, (id) => codes.has(id));
  // More than two lengths help nobody.
  return { number: taken + 1, totals: after.length > 2 ? [] : after.map((length) => taken + 1 + length) };
}

/** “Step 2 of 4”, “Step 2 of 3 or 4”, “Step 2”; empty where not even the number is known. */
export function progressText(progress: Progress | undefined): string {
  if (!progress) return '';
  const { number, totals } = progress;
  return totals.length === 0
    ? phrase('Step {number}', { number })
    : phrase('Step {number} of {totals}', { number, totals: orList(totals.map(String)) });
}

/**
 * The lengths of all ways from a state to one of those asked for; none where a way can go round in a circle,
 * which shows in one of at least as many steps as there are states.
 */
function lengths(sequence: Sequence, from: string, isEnd: (id: string) => boolean): number[] {
  const found: number[] = [];
  let here = new Set([from]);
  const count = sequence.states.length;
  for (let steps = 0; steps < 2 * count && here.size > 0; steps += 1) {
    const isThere = [...here].some(isEnd);
    if (isThere && steps >= count) return [];
    if (isThere) found.push(steps);
    const next = sequence.transitions.filter((one) => here.has(one.from) && !isEnd(one.from));
    here = new Set(next.map(({ to }) => to));
  }
  return found;
}
