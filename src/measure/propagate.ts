/** The law of propagation of uncertainty (GUM 5): results that follow from points, and from other results. */
import type { Bound, Quantity, Unit } from './quantity.ts';
import { type Component, Gathered, merged, scaled } from './uncertainty.ts';

/** What results that follow from the same readings share; see from-points.ts. */
export interface Shared {
  /** `into`, or a new one, with these times a sensitivity added. */
  joined(into: Shared | undefined, sensitivity: number): Shared;
  budget(): Component[];
  /** The budget summed without being written out. */
  gather(gathered: Gathered): void;
}

/** How far a result moves with another one it is made from (its sensitivity, GUM 5.1.3), and that one. */
export type Term = readonly [sensitivity: number, from: Quantity];

/**
 * A result made from others, first order: what several of them share is counted once, with its sign
 * (GUM 5.2), so that a common voltmeter cancels in a ratio. `own` is what the making itself adds.
 */
export function propagate(
  value: number,
  unit: Unit,
  terms: readonly Term[],
  own: readonly Component[] = [],
  bound: Bound = 'exact',
): Quantity {
  let points: Shared | undefined;
  const others: Component[] = [];
  for (const [sensitivity, from] of terms) {
    if (!(from instanceof Result)) {
      others.push(...scaled(from.budget, sensitivity));
      continue;
    }
    if (from.points) points = from.points.joined(points, sensitivity);
    if (from.others.length > 0) others.push(...scaled(from.others, sensitivity));
  }
  if (own.length > 0) others.push(...own);
  return new Result(value, unit, bound, points, others);
}

/** A value known by its own components alone; without any it is exact, or a bound. */
export function quantity(
  value: number,
  unit: Unit,
  components: readonly Component[],
  bound: Bound = 'exact',
): Quantity {
  return new Result(value, unit, bound, undefined, components);
}

/** A quantity that keeps what it was made from; uncertainty and budget follow when they are asked for. */
export class Result implements Quantity {
  readonly value: number;
  readonly unit: Unit;
  readonly bound: Bound;
  /** How it moves with the points it follows from; undefined where it follows from none. */
  readonly points: Shared | undefined;
  /** Components besides those of the points, in its unit. */
  readonly others: readonly Component[];
  #gathered: Gathered | undefined;
  #coverageFactor: number | undefined;
  #budget: readonly Component[] | undefined;

  constructor(
    value: number,
    unit: Unit,
    bound: Bound,
    points: Shared | undefined,
    others: readonly Component[],
  ) {
    this.value = value;
    this.unit = unit;
    this.bound = bound;
    this.points = points;
    this.others = others;
  }

  get standardUncertainty(): number {
    return this.#sums().standardUncertainty;
  }

  get coverageFactor(): number {
    this.#coverageFactor ??= this.#sums().coverageFactor;
    return this.#coverageFactor;
  }

  get expandedUncertainty(): number {
    return this.coverageFactor * this.standardUncertainty;
  }

  get budget(): readonly Component[] {
    this.#budget ??= merged([...(this.points?.budget() ?? []), ...this.others]);
    return this.#budget;
  }

  /** The budget summed without being written out: most results are only drawn. */
  #sums(): Gathered {
    if (this.#gathered) return this.#gathered;
    const gathered = new Gathered();
    this.#gathered = gathered;
    this.points?.gather(gathered);
    for (const one of merged(this.others)) {
      gathered.part(one.standardUncertainty, one.degreesOfFreedom, one.shape);
    }
    return gathered;
  }
}
