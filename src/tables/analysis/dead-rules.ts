/** Rules that never give the answer. */
import type { Budget } from './budget.ts';
import { answerKey, precedence, takesTheFirst } from './precedence.ts';
import { type Cube, isEmpty, meet, type Space, within } from './space.ts';
import { uncovered } from './uncovered.ts';

export interface DeadRule {
  readonly rule: string;
  /** `empty`: its tests let no value through that its inputs can have. `covered`: where it holds, others go before it. */
  readonly why: 'empty' | 'covered';
  /** The rules that go before it, in the order of the table: none of them can be left out. */
  readonly by: readonly string[];
}

/**
 * A rule is dead where it holds nowhere, and
 * - first: where earlier rules hold wherever it does;
 * - priority, and collect with min or max: where rules whose answer goes before its own hold wherever it does (of those
 *   that differ but are given no order, the earlier ones go first). One with the same answer does not make it dead, but
 *   may make it superfluous: see `subsumedIn`;
 * - unique: where some other rule holds wherever it does, so that it never is the only one;
 * - any: where rules with other answers hold wherever it does, so that it only ever contradicts;
 * - rule order, output order, collect otherwise: only where it holds nowhere, for every rule that holds counts.
 * @throws OutOfSteps
 */
export function* deadRulesIn(space: Space, budget: Budget): Generator<DeadRule> {
  const { table } = space;
  const empty = space.rules.map((cube) => isEmpty(space, cube));
  for (const [rule, { id }] of table.rules.entries()) {
    const cube = space.rules[rule] as Cube;
    if (empty[rule]) {
      yield { rule: id, why: 'empty', by: [] };
      continue;
    }
    const before = [...table.rules.keys()].filter(
      (other) => meet(space, cube, space.rules[other] as Cube) && goesBefore(space, other, rule),
    );
    if (before.length === 0) continue;
    const alone = before.find((other) => within(cube, space.rules[other] as Cube));
    if (alone === undefined && uncovered(space, cube, cubesOf(space, before), budget)) continue;
    const by = alone === undefined ? fewCovering(space, cube, before, budget) : [alone];
    yield { rule: id, why: 'covered', by: by.map((one) => table.rules[one]?.id ?? '') };
  }
}

/** Rules out of `all`, which together cover a cube, that cover it too, none of which can be left out; rising. */
function fewCovering(space: Space, cube: Cube, all: readonly number[], budget: Budget): number[] {
  const some: number[] = [];
  for (;;) {
    const left = uncovered(space, cube, cubesOf(space, some), budget);
    if (!left) break;
    const next =
      all.find((rule) => within(left, space.rules[rule] as Cube)) ??
      all.find((rule) => meet(space, left, space.rules[rule] as Cube));
    if (next === undefined) break;
    some.push(next);
  }
  for (const rule of [...some]) {
    const rest = some.filter((one) => one !== rule);
    if (!uncovered(space, cube, cubesOf(space, rest), budget)) some.splice(some.indexOf(rule), 1);
  }
  return some.sort((a, b) => a - b);
}

function cubesOf(space: Space, rules: readonly number[]): Cube[] {
  return rules.map((rule) => space.rules[rule] as Cube);
}

/** Whether `other` keeps `rule` from giving the answer where both hold. */
function goesBefore({ table }: Space, other: number, rule: number): boolean {
  if (other === rule) return false;
  if (table.hitPolicy === 'unique') return true;
  const differ = answerKey(table, other) !== answerKey(table, rule);
  if (table.hitPolicy === 'any') return differ;
  if (!takesTheFirst(table)) return false;
  const order = precedence(table, other, rule);
  return order < 0 || (order === 0 && differ && other < rule);
}
