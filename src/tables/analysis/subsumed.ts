/** Rules that another one makes superfluous: same answer, and it holds wherever they do. */
import { answerKey, countsTwice, orderMatters } from './precedence.ts';
import { type Cube, isEmpty, meet, type Space, within } from './space.ts';

export interface Subsumed {
  readonly rule: string;
  /** The rule that says as much. */
  readonly by: string;
}

/**
 * Leaving out such a rule changes no answer; of `unique`, it only mends the answers that the two break together. Where
 * every rule that holds counts (rule order, output order, collect other than min and max) there are none. Of two rules
 * alike the later one is named. All of them can be left out at once.
 */
export function* subsumedIn(space: Space): Generator<Subsumed> {
  const { table } = space;
  if (countsTwice(table) && table.hitPolicy !== 'unique') return;
  const indices = [...table.rules.keys()];
  const answers = indices.map((rule) => answerKey(table, rule));
  /** Rules found so far, and what says as much as each of them. */
  const gone = new Map<number, number>();
  for (const rule of indices.toReversed()) {
    const cube = space.rules[rule] as Cube;
    if (isEmpty(space, cube)) continue;
    const by = indices.find((other) => {
      if (other === rule || gone.has(other) || answers[other] !== answers[rule]) return false;
      return within(cube, space.rules[other] as Cube) && canStandFor(space, other, rule);
    });
    if (by !== undefined) gone.set(rule, by);
  }
  for (const [rule, by] of [...gone].reverse()) {
    let left = by;
    for (let next = gone.get(left); next !== undefined; next = gone.get(next)) left = next;
    yield { rule: table.rules[rule]?.id ?? '', by: table.rules[left]?.id ?? '' };
  }
}

/** Whether no rule between the two would come to answer instead: only where the other one is later. */
function canStandFor(space: Space, other: number, rule: number): boolean {
  for (let between = rule + 1; between < other; between += 1) {
    if (
      orderMatters(space.table, between, rule) &&
      meet(space, space.rules[between] as Cube, space.rules[rule] as Cube)
    ) {
      return false;
    }
  }
  return true;
}
