/** Which inputs a gap has to hold to: the smallest set that keeps it off every rule (a minimum hitting set). */
import { type Budget, OutOfSteps } from './budget.ts';

/** Beyond this many steps of looking for a smaller one, the best found so far will do. */
const mostTries = 2_000;

/**
 * @param misses for each rule the inputs along which it misses the point, none of them empty.
 * @returns indices of inputs, rising; the fewest, or few where that would take long.
 */
export function keptInputs(misses: readonly (readonly number[])[], budget: Budget): number[] {
  let best: readonly number[] | undefined;
  let tries = 0;
  const search = (kept: readonly number[], left: readonly (readonly number[])[]): void => {
    if (best && kept.length >= best.length - (left.length > 0 ? 1 : 0)) return;
    if (left.length === 0) {
      best = kept;
      return;
    }
    if (tries > mostTries && best) return;
    tries += 1;
    budget.take(left.length);
    const shortest = left.reduce((a, b) => (b.length < a.length ? b : a));
    const hits = (input: number): number => left.filter((one) => one.includes(input)).length;
    for (const input of shortest.toSorted((a, b) => hits(b) - hits(a) || a - b)) {
      search(
        [...kept, input],
        left.filter((one) => !one.includes(input)),
      );
    }
  };
  search([], misses);
  if (!best) throw new OutOfSteps();
  return best.toSorted((a, b) => a - b);
}
