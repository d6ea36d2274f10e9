/** Results that follow from points of a bench: what these share, and what is each one’s own. */
import { ratioDb, relativeToDb } from './level.ts';
import type { Influences, Point } from './point.ts';
import { quantity, Result, type Shared } from './propagate.ts';
import type { Quantity } from './quantity.ts';
import { type Component, type Gathered, limits } from './uncertainty.ts';

/** The volts of a point with their uncertainty. */
export function pointVolts(point: Point): Quantity {
  return new Result(point.voltsRms, 'V', 'exact', new FromPoints([point], [1]), []);
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
  return new Result(levelDb, 'dB', 'exact', new FromPoints([point, reference], sensitivities), []);
}

/** How far a result moves with each of the points it follows from. */
class FromPoints implements Shared {
  /** Each once. */
  readonly #points: Point[];
  /** With the volts of each point, in the unit of the result per volt. */
  readonly #sensitivities: number[];

  constructor(points: Point[], sensitivities: number[]) {
    this.#points = points;
    this.#sensitivities = sensitivities;
  }

  /** A point both have is counted once, with its sign. */
  joined(into: Shared | undefined, sensitivity: number): FromPoints {
    const all = into instanceof FromPoints ? into : new FromPoints([], []);
    const points = all.#points;
    const sensitivities = all.#sensitivities;
    this.#points.forEach((point, index) => {
      const change = sensitivity * (this.#sensitivities[index] ?? 0);
      const known = points.indexOf(point);
      if (known === -1) {
        points.push(point);
        sensitivities.push(change);
      } else sensitivities[known] = (sensitivities[known] ?? 0) + change;
    });
    return all;
  }

  budget(): Component[] {
    return this.#points.flatMap((point, index) => pointBudget(point, this.#sensitivities[index] ?? 0));
  }

  /** The budget summed without being written out. */
  gather(gathered: Gathered): void {
    const points = this.#points;
    const sensitivities = this.#sensitivities;
    for (let at = 0; at < points.length; at += 1) {
      const point = points[at] as Point;
      const sensitivity = sensitivities[at] ?? 0;
      const { countsVolts, resolutionVolts, repeats } = point.influences;
      gathered.limits(sensitivity * countsVolts);
      gathered.limits((sensitivity * resolutionVolts) / 2);
      gathered.part(sensitivity * point.voltsRms * repeats.relative, repeats.degreesOfFreedom);
    }
    for (const kind of sharedKinds) gatherShared(gathered, kind, points, sensitivities);
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

/** The budget of a point’s volts times a sensitivity: what it shares first, then what is its own. */
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
