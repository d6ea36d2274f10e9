/** The law of propagation of uncertainty (GUM 5): results that follow from points, and from other results. */
import { ratioDb, relativeToDb } from './level.ts';
import type { Influences, Point } from './point.ts';
import type { Bound, Quantity, Unit } from './quantity.ts';
import { type Component, Gathered, limits, merged, scaled } from './uncertainty.ts';

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
  const points: Point[] = [];
  const sensitivities: number[] = [];
  const others: Component[] = [];
  for (const [sensitivity, from] of terms) {
    if (!(from instanceof Result)) {
      others.push(...scaled(from.budget, sensitivity));
      continue;
    }
    from.points.forEach((point, index) => {
      const change = sensitivity * (from.sensitivities[index] ?? 0);
      const known = points.indexOf(point);
      if (known === -1) {
        points.push(point);
        sensitivities.push(change);
      } else sensitivities[known] = (sensitivities[known] ?? 0) + change;
    });
    if (from.others.length > 0) others.push(...scaled(from.others, sensitivity));
  }
  if (own.length > 0) others.push(...own);
  return new Result(value, unit, bound, points, sensitivities, others);
}

/** A value known by its own components alone; without any it is exact, or a bound. */
export function quantity(
  value: number,
  unit: Unit,
  components: readonly Component[],
  bound: Bound = 'exact',
): Quantity {
  return new Result(value, unit, bound, [], [], components);
}

/** The volts of a point with their uncertainty. */
export function pointVolts(point: Point): Quantity {
  return new Result(point.voltsRms, 'V', 'exact', [point], [1], []);
}

/**
 * The level of `point` relative to `reference`, dB. What the two share cancels: the signal level and the load
 * within a session, the voltmeter's gain where one band of its specification covers both (GUM 5.2).
 */
export function levelBetween(point: Point, reference: Point): Quantity {
  const perRelative = relativeToDb(1);
  const levelDb = ratioDb(point.voltsRms / reference.voltsRms);
  if (point === reference) return quantity(levelDb, 'dB', []);
  const sensitivities = [perRelative / point.voltsRms, -perRelative / reference.voltsRms];
  return new Result(levelDb, 'dB', 'exact', [point, reference], sensitivities, []);
}

/** A quantity that keeps what it was made from; uncertainty and budget follow when they are asked for. */
class Result implements Quantity {
  readonly value: number;
  readonly unit: Unit;
  readonly bound: Bound;
  /** The points it follows from, each once. */
  readonly points: readonly Point[];
  /** How far it moves with the volts of each point, in its unit per volt. */
  readonly sensitivities: readonly number[];
  /** Components besides those of the points, in its unit. */
  readonly others: readonly Component[];
  #gathered: Gathered | undefined;
  #coverageFactor: number | undefined;
  #budget: readonly Component[] | undefined;

  constructor(
    value: number,
    unit: Unit,
    bound: Bound,
    points: readonly Point[],
    sensitivities: readonly number[],
    others: readonly Component[],
  ) {
    this.value = value;
    this.unit = unit;
    this.bound = bound;
    this.points = points;
    this.sensitivities = sensitivities;
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
    this.#budget ??= merged([
      ...this.points.flatMap((point, index) => pointBudget(point, this.sensitivities[index] ?? 0)),
      ...this.others,
    ]);
    return this.#budget;
  }

  /** The budget summed without being written out: most results are only drawn. */
  #sums(): Gathered {
    if (this.#gathered) return this.#gathered;
    const gathered = new Gathered();
    this.#gathered = gathered;
    const { points, sensitivities } = this;
    for (let at = 0; at < points.length; at += 1) {
      const point = points[at] as Point;
      const sensitivity = sensitivities[at] ?? 0;
      const { countsVolts, resolutionVolts, repeats } = point.influences;
      gathered.limits(sensitivity * countsVolts);
      gathered.limits((sensitivity * resolutionVolts) / 2);
      gathered.part(sensitivity * point.voltsRms * repeats.relative, repeats.degreesOfFreedom);
    }
    for (const kind of sharedKinds) gatherShared(gathered, kind, points, sensitivities);
    for (const one of merged(this.others)) {
      gathered.part(one.standardUncertainty, one.degreesOfFreedom, one.shape);
    }
    return gathered;
  }
}

/** Influences that act on several points alike. */
const sharedKinds = ['gain', 'signal', 'load'] as const;

/** Adds one shared influence: the points it acts on are summed with their signs before squaring. */
function gatherShared(
  gathered: Gathered,
  kind: (typeof sharedKinds)[number],
  points: readonly Point[],
  sensitivities: readonly number[],
): void {
  let done: string[] | undefined;
  for (let first = 0; first < points.length; first += 1) {
    const { id } = (points[first] as Point).influences[kind];
    if (done?.includes(id)) continue;
    let halfWidth = 0;
    let isShared = true;
    for (let at = first; at < points.length; at += 1) {
      const point = points[at] as Point;
      const influence: Influences['gain'] = point.influences[kind];
      if (influence.id === id) halfWidth += (sensitivities[at] ?? 0) * point.voltsRms * influence.limit;
      else isShared = false;
    }
    gathered.limits(halfWidth);
    if (isShared && first === 0) return;
    done = [...(done ?? []), id];
  }
}

/** The budget of a point's volts times a sensitivity: what it shares first, then what is its own. */
function pointBudget(point: Point, sensitivity: number): Component[] {
  const { gain, signal, load, countsVolts, resolutionVolts, repeats } = point.influences;
  const perRelative = sensitivity * point.voltsRms;
  // The first reading's id names the point, so that what is its own cancels where it meets itself.
  const [own = ''] = point.readings;
  return [
    limits('voltmeter gain', perRelative * gain.limit, gain.id),
    limits('signal level', perRelative * signal.limit, signal.id),
    limits('load', perRelative * load.limit, load.id),
    limits('counts', sensitivity * countsVolts, `counts ${own}`),
    limits('resolution', (sensitivity * resolutionVolts) / 2, `resolution ${own}`),
    {
      name: 'repeats',
      standardUncertainty: perRelative * repeats.relative,
      degreesOfFreedom: repeats.degreesOfFreedom,
      shape: undefined,
      id: `repeats ${own}`,
    },
  ];
}

/**
 * Standard uncertainty, dB, of what is a point's own: counts, resolution, repeats. For comparing many points
 * of one session, where all else cancels.
 */
export function ownUncertaintyDb({ voltsRms, influences }: Point): number {
  const { countsVolts, resolutionVolts, repeats } = influences;
  const limitsSquare = (countsVolts ** 2 + (resolutionVolts / 2) ** 2) / 3;
  return relativeToDb(Math.sqrt(limitsSquare / voltsRms ** 2 + repeats.relative ** 2));
}
