/** Inputs that never change the answer. */

import type { Budget } from './budget.ts';
import { isSame } from './same-answers.ts';
import { singleAnswers } from './single-answers.ts';
import { type Cube, classesIn, type Space } from './space.ts';

export interface IdleInput {
  readonly input: string;
  /** Whether rules test it although it makes no difference; false where no rule does. */
  readonly tested: boolean;
}

/**
 * Exact for policies that come to one answer (unique, any, priority, first, collect with min or max): whatever the other
 * inputs are, the answer is the same for all values of this one, be it none, the default, or broken. For the others an
 * input is idle where every rule lets through all of its values.
 * @throws OutOfSteps
 */
export function* idleInputsIn(space: Space, budget: Budget): Generator<IdleInput> {
  const answers = singleAnswers(space);
  for (const [index, { input, passes }] of space.grid.entries()) {
    const tested = passes.some((each) => each.includes(0));
    if (!tested) yield { input: input.id, tested };
    else if (answers && makesNoDifference(space, index, answers, budget)) yield { input: input.id, tested };
  }
}

/** Whether along the input all classes, compared one with the next, answer alike. */
function makesNoDifference(
  space: Space,
  input: number,
  answers: NonNullable<ReturnType<typeof singleAnswers>>,
  budget: Budget,
): boolean {
  const classes = classesIn(space, space.all, input);
  const start = space.starts[input] ?? 0;
  const holding = (index: number): number[] =>
    answers.order.filter(
      (rule) => (((space.rules[rule] as Cube)[start + (index >>> 5)] ?? 0) >>> (index & 31)) & 1,
    );
  const lists = classes.map(holding);
  return lists.every((list, index) => {
    const next = lists[index + 1];
    return !next || isSame(space, input, list, next, answers, budget);
  });
}
