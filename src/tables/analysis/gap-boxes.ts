/**
 * Where no rule holds, as disjoint boxes by a sweep along the inputs: pieces next to each other with the same rules are
 * taken together, then the next input is cut for those rules alone (after Calvanese et al., “Semantics and Analysis of
 * DMN Decision Tables”, BPM 2016).
 */
import { type Box, boxOfPieces } from './box.ts';
import { Budget, withinBudget } from './budget.ts';
import { isEmpty, type Space } from './space.ts';

export interface GapBoxes {
  /** Apart from each other, in the order of the inputs’ values; all there are, or the first of them that were met. */
  readonly boxes: readonly Box[];
  /** How many there are; undefined where counting them would take too long. */
  readonly count: number | undefined;
  /** False where there are more boxes than are given. */
  readonly complete: boolean;
}

/** For each input that a box cuts, in their order, the indices of its pieces; the inputs after them are free. */
type Part = readonly (readonly number[])[];

interface Found {
  readonly parts: readonly Part[];
  readonly count: number;
}

/** @param most boxes to give. */
export function gapBoxesIn(space: Space, most: number, steps: number): GapBoxes {
  if (isEmpty(space, space.all)) return { boxes: [], count: 0, complete: true };
  const counted = withinBudget(() => new Sweep(space, most, new Budget(steps)).all())?.result;
  const parts = counted?.parts ?? firstParts(space, most, steps);
  const boxes = parts.map((part) =>
    boxOfPieces(
      space,
      space.grid.map(({ pieces }, input) => part[input] ?? [...pieces.keys()]),
    ),
  );
  return { boxes, count: counted?.count, complete: counted?.count === boxes.length };
}

/** The first boxes, where there are too many to count them. */
function firstParts(space: Space, most: number, steps: number): Part[] {
  const parts: Part[] = [];
  withinBudget(() => {
    for (const part of new Sweep(space, most, new Budget(steps)).each()) {
      if (parts.push(part) === most) break;
    }
  });
  return parts;
}

class Sweep {
  readonly #space: Space;
  readonly #most: number;
  readonly #budget: Budget;
  /** By the first input still to cut and the rules still active: what is left of the sweep depends on these only. */
  readonly #known = new Map<string, Found>();
  /** For each rule the first input from which on it lets everything through. */
  readonly #freeFrom: readonly number[];

  constructor(space: Space, most: number, budget: Budget) {
    this.#space = space;
    this.#most = most;
    this.#budget = budget;
    this.#freeFrom = space.table.rules.map(
      (_, rule) => space.grid.findLastIndex(({ passes }) => passes[rule]?.includes(0) ?? false) + 1,
    );
  }

  all(): Found {
    return this.#from(0, this.#rules());
  }

  /** One box after another, without looking ahead. */
  each(): Generator<Part> {
    return this.#eachFrom(0, this.#rules());
  }

  *#eachFrom(input: number, active: readonly number[]): Generator<Part> {
    if (active.length === 0) yield [];
    else if (!this.#isCovered(input, active)) {
      for (const { pieces, rules } of this.#runs(input, active)) {
        for (const part of this.#eachFrom(input + 1, rules)) yield [pieces, ...part];
      }
    }
  }

  #rules(): number[] {
    return [...this.#space.table.rules.keys()];
  }

  /** Whether a rule lets everything through from this input on. */
  #isCovered(input: number, active: readonly number[]): boolean {
    return active.some((rule) => (this.#freeFrom[rule] ?? 0) <= input);
  }

  #from(input: number, active: readonly number[]): Found {
    if (active.length === 0) return { parts: [[]], count: 1 };
    if (this.#isCovered(input, active)) return { parts: [], count: 0 };
    const key = `${input}:${active.join(' ')}`;
    const known = this.#known.get(key);
    if (known) return known;
    const parts: Part[] = [];
    let count = 0;
    for (const { pieces, rules } of this.#runs(input, active)) {
      const rest = this.#from(input + 1, rules);
      count += rest.count;
      for (const part of rest.parts) {
        if (parts.length < this.#most) parts.push([pieces, ...part]);
      }
    }
    const found = { parts, count };
    this.#known.set(key, found);
    return found;
  }

  /** The pieces of an input, those next to each other with the same active rules together. */
  #runs(input: number, active: readonly number[]): { pieces: number[]; rules: number[] }[] {
    const { pieces, passes } = this.#space.grid[input] ?? { pieces: [], passes: [] };
    const runs: { pieces: number[]; rules: number[] }[] = [];
    this.#budget.take(pieces.length * active.length);
    for (const piece of pieces.keys()) {
      const rules = active.filter((rule) => passes[rule]?.[piece] === 1);
      const last = runs.at(-1);
      if (last && last.rules.length === rules.length && last.rules.every((rule, at) => rule === rules[at])) {
        last.pieces.push(piece);
      } else {
        runs.push({ pieces: [piece], rules });
      }
    }
    return runs;
  }
}
