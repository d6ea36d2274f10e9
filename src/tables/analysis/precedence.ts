/** What the hit policy makes of two rules that hold together. */
import { comparePriority } from '../hit-policy.ts';
import type { Table } from '../table.ts';

/** The results of a rule as one text: equal where the rules answer alike. */
export function answerKey(table: Table, rule: number): string {
  return JSON.stringify(table.rules[rule]?.results);
}

/** Whether the policy takes one answer out of those of the rules that hold, by the order of the rules or their answers. */
export function takesTheFirst({ hitPolicy, aggregation }: Table): boolean {
  return hitPolicy === 'first' || hitPolicy === 'priority' || aggregation === 'min' || aggregation === 'max';
}

/**
 * Negative where rule `a` is taken before rule `b` when both hold, positive where after, 0 where the policy does not say:
 * `first` by their places, `priority` by the lists of the outputs, the least or greatest by value, a value that is not
 * a number last. For policies that take the first only.
 */
export function precedence(table: Table, a: number, b: number): number {
  const [one, other] = [table.rules[a], table.rules[b]];
  if (table.hitPolicy === 'first' || !one || !other) return a - b;
  if (table.hitPolicy === 'priority') return comparePriority(table, one, other);
  const worth = (value: unknown): number =>
    typeof value !== 'number' ? Number.POSITIVE_INFINITY : table.aggregation === 'min' ? value : -value;
  const [mine, theirs] = [worth(one.results[0]), worth(other.results[0])];
  return mine === theirs ? 0 : mine - theirs;
}

/**
 * Whether the order of two rules in the table makes a difference to the answer where both hold. The order of what
 * `collect` collects is arbitrary (DMN 1.3, 8.2.10).
 */
export function orderMatters(table: Table, a: number, b: number): boolean {
  if (answerKey(table, a) === answerKey(table, b)) return false;
  const [one, other] = [table.rules[a], table.rules[b]];
  switch (table.hitPolicy) {
    case 'first':
    case 'rule order':
      return true;
    case 'priority':
    case 'output order':
      return one !== undefined && other !== undefined && comparePriority(table, one, other) === 0;
    default:
      return false;
  }
}

/** Whether two rules with one answer make another answer together than one of them alone. */
export function countsTwice({ hitPolicy, aggregation }: Table): boolean {
  if (hitPolicy === 'collect') return aggregation !== 'min' && aggregation !== 'max';
  return hitPolicy === 'rule order' || hitPolicy === 'output order' || hitPolicy === 'unique';
}
