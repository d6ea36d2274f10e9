/** Rules that hold together. */
import { type Box, boxOfCube } from './box.ts';
import { type Budget, withinBudget } from './budget.ts';
import { answerKey, precedence } from './precedence.ts';
import { type Cube, common, type Space } from './space.ts';
import { uncovered } from './uncovered.ts';

export interface Overlap {
  /** The ids of the two rules, in the order of the table. */
  readonly rules: readonly [string, string];
  /** Where both hold. */
  readonly box: Box;
  /**
   * Whether the hit policy does not allow it: of `unique` always; of `any` where the answers differ; of `priority`
   * where they differ, neither goes first, and no third rule goes before both throughout the box.
   */
  readonly breaks: boolean;
  /** Whether it breaks the policy and the answers differ: the table contradicts itself. */
  readonly contradicts: boolean;
}

interface Pair {
  readonly first: number;
  readonly second: number;
  readonly cube: Cube;
  readonly breaks: boolean;
  readonly differ: boolean;
}

export interface Overlaps {
  readonly overlaps: readonly Overlap[];
  readonly count: number;
  readonly breaking: number;
  /** Whether for some pairs there were no steps left to tell whether they break the policy: they count as not. */
  readonly undecided: boolean;
}

/** Pairs of rules that hold together, those that break the policy first. */
export function overlapsIn(space: Space, most: number, budget: Budget): Overlaps {
  const { rules } = space.table;
  const answers = rules.map((_, rule) => answerKey(space.table, rule));
  const [breaking, harmless]: [Pair[], Pair[]] = [[], []];
  let [count, broken] = [0, 0];
  let undecided = false;
  for (let first = 0; first < rules.length; first += 1) {
    for (let second = first + 1; second < rules.length; second += 1) {
      const cube = common(space, space.rules[first] as Cube, space.rules[second] as Cube);
      if (!cube) continue;
      const differ = answers[first] !== answers[second];
      const told = withinBudget(() => breaksPolicy(space, first, second, cube, differ, budget));
      undecided ||= !told;
      const breaks = told?.result ?? false;
      count += 1;
      if (breaks) broken += 1;
      const list = breaks ? breaking : harmless;
      if (list.length < most) list.push({ first, second, cube, breaks, differ });
    }
  }
  const overlaps = [...breaking, ...harmless].slice(0, most).map(
    ({ first, second, cube, breaks, differ }): Overlap => ({
      rules: [rules[first]?.id ?? '', rules[second]?.id ?? ''],
      box: boxOfCube(space, cube),
      breaks,
      contradicts: breaks && differ,
    }),
  );
  return { overlaps, count, breaking: broken, undecided };
}

function breaksPolicy(
  space: Space,
  first: number,
  second: number,
  cube: Cube,
  differ: boolean,
  budget: Budget,
): boolean {
  const { table } = space;
  switch (table.hitPolicy) {
    case 'unique':
      return true;
    case 'any':
      return differ;
    case 'priority': {
      if (!differ || precedence(table, first, second) !== 0) return false;
      const before = space.rules.filter((_, rule) => precedence(table, rule, first) < 0);
      return uncovered(space, cube, before, budget) !== undefined;
    }
    default:
      return false;
  }
}
