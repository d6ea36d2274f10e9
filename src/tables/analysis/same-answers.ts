/** Whether two lists of rules answer alike, whatever the inputs but one are. */
import type { Budget } from './budget.ts';
import type { SingleAnswers } from './single-answers.ts';
import { type Cube, inputsOf, meetAlong, type Space } from './space.ts';

/**
 * @param besides the input left out: what rules ask of it is taken to be met.
 * @param some rules, and @param others, in the order of `answers`.
 * @throws OutOfSteps
 */
export function isSame(
  space: Space,
  besides: number,
  some: readonly number[],
  others: readonly number[],
  answers: SingleAnswers,
  budget: Budget,
): boolean {
  const inputs = inputsOf(space).filter((input) => input !== besides);
  return new Comparison(space, inputs, answers, budget).same(space.all, some, others);
}

/** Two rules that break the policy, as an answer. */
const brokenAnswer = -1;

interface State {
  /** Rules that hold somewhere and still count. */
  readonly rules: readonly number[];
  /** The answer throughout, where it is one. */
  readonly answer: number | undefined;
  /** A rule to tell apart where it holds from where it does not, where the answer is not yet one. */
  readonly open: number | undefined;
}

class Comparison {
  readonly #space: Space;
  readonly #inputs: readonly number[];
  readonly #answers: SingleAnswers;
  readonly #budget: Budget;

  constructor(space: Space, inputs: readonly number[], answers: SingleAnswers, budget: Budget) {
    this.#space = space;
    this.#inputs = inputs;
    this.#answers = answers;
    this.#budget = budget;
  }

  /** Whether the two answer alike throughout the domain. */
  same(domain: Cube, some: readonly number[], others: readonly number[]): boolean {
    this.#budget.take(some.length + others.length + 1);
    const [one, other] = [this.#state(domain, some), this.#state(domain, others)];
    if (one.rules.length === other.rules.length && one.rules.every((rule, at) => rule === other.rules[at])) {
      return true;
    }
    if (one.answer !== undefined && other.answer !== undefined) return one.answer === other.answer;
    const open = one.open ?? other.open;
    if (open === undefined) return true;
    const { starts } = this.#space;
    const cube = this.#space.rules[open] as Cube;
    const along = this.#openAlong(domain, cube) ?? 0;
    return [true, false].every((inside) => {
      const part = domain.slice();
      for (let word = starts[along] ?? 0; word < (starts[along + 1] ?? 0); word += 1) {
        const theirs = cube[word] ?? 0;
        part[word] = ((part[word] ?? 0) & (inside ? theirs : ~theirs)) >>> 0;
      }
      return this.same(part, one.rules, other.rules);
    });
  }

  #state(domain: Cube, list: readonly number[]): State {
    const { of, answers, none } = this.#answers;
    const rules: number[] = [];
    let open: number | undefined;
    /** The answer of the rules that hold throughout. */
    let whole: number | undefined;
    for (const rule of list) {
      const cube = this.#space.rules[rule] as Cube;
      if (!this.#holdsSomewhere(domain, cube)) continue;
      const holdsThroughout = this.#openAlong(domain, cube) === undefined;
      const answer = answers[rule] ?? none;
      rules.push(rule);
      if (!holdsThroughout) {
        open ??= rule;
        continue;
      }
      if (of === 'first') {
        whole = answer;
        break;
      }
      const clashes = whole !== undefined && (of === 'only' || whole !== answer);
      if (clashes) return { rules, answer: brokenAnswer, open: undefined };
      whole = answer;
    }
    const settled = whole ?? none;
    // Whatever holds where: one answer is one answer, unless two rules at once break the policy.
    const alike = of !== 'only' && rules.every((rule) => answers[rule] === settled);
    if (open === undefined || alike) return { rules, answer: settled, open: undefined };
    return { rules, answer: undefined, open };
  }

  #holdsSomewhere(domain: Cube, cube: Cube): boolean {
    for (const input of this.#inputs) if (!meetAlong(this.#space, domain, cube, input)) return false;
    return true;
  }

  /** The first input along which the domain holds values that the cube does not; undefined where there is none. */
  #openAlong(domain: Cube, cube: Cube): number | undefined {
    for (const input of this.#inputs) if (!this.#isWholeAlong(domain, cube, input)) return input;
    return undefined;
  }

  #isWholeAlong(domain: Cube, cube: Cube, input: number): boolean {
    const { starts } = this.#space;
    for (let word = starts[input] ?? 0; word < (starts[input + 1] ?? 0); word += 1) {
      if (((domain[word] ?? 0) & ~(cube[word] ?? 0)) !== 0) return false;
    }
    return true;
  }
}
