/**
 * Where no rule holds, for people: few boxes, each as large as it can be, that together are all that is missing. They may
 * overlap.
 */
import { everything } from '../sets/value-set.ts';
import { type Box, boxOfCube } from './box.ts';
import { type Budget, withinBudget } from './budget.ts';
import { keptInputs } from './kept-inputs.ts';
import {
  type Cube,
  classesIn,
  inputsOf,
  isEmpty,
  knownValues,
  meetAlong,
  type Space,
  setBit,
} from './space.ts';
import { uncovered } from './uncovered.ts';

export interface Gap {
  readonly box: Box;
  /** Whether values that are not known are part of it: `only` where an input has to be unknown. */
  readonly notKnown: 'no' | 'too' | 'only';
}

export interface Gaps {
  readonly gaps: readonly Gap[];
  /** Whether the gaps are all that is missing. */
  readonly complete: boolean;
}

/**
 * Gaps that hold to few inputs come first, those with something not known last; where not all are given, known values
 * have been looked at first.
 * @param most gaps to give.
 */
export function gapsIn(space: Space, most: number, budget: Budget): Gaps {
  const cubes: Cube[] = [];
  const all = withinBudget(() => {
    for (const values of [knownValues(space), space.all]) {
      for (;;) {
        const found = uncovered(space, values, [...space.rules, ...cubes], budget);
        if (!found) break;
        if (cubes.length === most) return false;
        cubes.push(grown(space, onePoint(space, found), budget));
      }
    }
    // Later boxes may have made earlier ones superfluous.
    for (const cube of [...cubes]) {
      const rest = cubes.filter((one) => one !== cube);
      if (!uncovered(space, cube, rest, budget)) cubes.splice(cubes.indexOf(cube), 1);
    }
    return true;
  });
  const gaps = cubes.map((cube) => ({ box: boxOfCube(space, cube), notKnown: notKnownIn(space, cube) }));
  return { gaps: gaps.toSorted((a, b) => rank(a) - rank(b)), complete: all?.result ?? false };
}

/** Those that hold to few inputs first, those with something not known last. */
function rank({ box, notKnown }: Gap): number {
  return box.sets.filter((set) => set !== everything).length + (notKnown === 'only' ? box.sets.length : 0);
}

/** One point of a cube, the first class of each input. */
function onePoint(space: Space, cube: Cube): Cube {
  const point: Cube = new Uint32Array(cube.length);
  for (const input of inputsOf(space)) {
    setBit(point, space.starts[input] ?? 0, classesIn(space, cube, input)[0] ?? 0);
  }
  return point;
}

/**
 * The largest box without a rule around a point: as many inputs as possible are freed, the others widened one by one as
 * far as no rule is met.
 */
function grown(space: Space, point: Cube, budget: Budget): Cube {
  const inputs = inputsOf(space);
  const kept = keptInputs(
    space.rules
      .filter((rule) => !isEmpty(space, rule))
      .map((rule) => inputs.filter((input) => !meetAlong(space, rule, point, input))),
    budget,
  );
  const cube = space.all.slice();
  for (const input of kept) copyAlong(space, cube, point, input);
  for (const input of kept) {
    budget.take(space.rules.length);
    const others = inputs.filter((one) => one !== input);
    copyAlong(space, cube, space.all, input);
    for (const rule of space.rules) {
      if (others.every((one) => meetAlong(space, rule, cube, one))) {
        for (let word = space.starts[input] ?? 0; word < (space.starts[input + 1] ?? 0); word += 1) {
          cube[word] = ((cube[word] ?? 0) & ~(rule[word] ?? 0)) >>> 0;
        }
      }
    }
  }
  return cube;
}

function copyAlong({ starts }: Space, to: Cube, from: Cube, input: number): void {
  const [start, end] = [starts[input] ?? 0, starts[input + 1] ?? 0];
  to.set(from.subarray(start, end), start);
}

function notKnownIn(space: Space, cube: Cube): Gap['notKnown'] {
  const known = knownValues(space);
  let too = false;
  for (const input of inputsOf(space)) {
    if (!meetAlong(space, cube, known, input)) return 'only';
    const unknown = known.map((word, index) => ~word & (space.all[index] ?? 0));
    too ||= meetAlong(space, cube, unknown, input);
  }
  return too ? 'too' : 'no';
}
