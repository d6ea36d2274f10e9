/** Analysis is exponential at worst: a budget of steps bounds it, and what ran out of it is said. */

/** Steps left to take; a step is one rule looked at. Shared by the parts of one kind of finding. */
export class Budget {
  #left: number;

  constructor(steps: number) {
    this.#left = steps;
  }

  /** Takes steps. @throws OutOfSteps where there are none left. */
  take(steps: number): void {
    this.#left -= steps;
    if (this.#left < 0) throw new OutOfSteps();
  }
}

/** Thrown where the budget does not suffice. */
export class OutOfSteps extends Error {}

/** What `find` gives, or undefined where it ran out of steps. */
export function withinBudget<Result>(find: () => Result): { readonly result: Result } | undefined {
  try {
    return { result: find() };
  } catch (error) {
    if (error instanceof OutOfSteps) return undefined;
    throw error;
  }
}
