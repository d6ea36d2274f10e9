/** How a policy that comes to one answer does so, for comparing answers without evaluating the table. */
import { decided } from '../decided.ts';
import type { Table } from '../table.ts';
import { answerKey, precedence, takesTheFirst } from './precedence.ts';
import type { Space } from './space.ts';

export interface SingleAnswers {
  /** The rules, for a policy that takes the first of those that hold, in its order. */
  readonly order: readonly number[];
  /** For each rule its answer: equal numbers for equal answers. */
  readonly answers: readonly number[];
  /** The answer where no rule holds. */
  readonly none: number;
  /**
   * `first`: the first rule that holds answers. `only`: two that hold break the policy. `agreeing`: two with different
   * answers do.
   */
  readonly of: 'first' | 'only' | 'agreeing';
}

/** Undefined for policies that give any number of answers. */
export function singleAnswers({ table }: Space): SingleAnswers | undefined {
  const { hitPolicy } = table;
  const of = takesTheFirst(table)
    ? 'first'
    : hitPolicy === 'unique'
      ? 'only'
      : hitPolicy === 'any'
        ? 'agreeing'
        : undefined;
  if (!of) return undefined;
  const numbers = new Map<string, number>();
  const numberOf = (key: string): number => {
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  };
  const indices = [...table.rules.keys()];
  return {
    order: of === 'first' ? indices.toSorted((a, b) => precedence(table, a, b)) : indices,
    answers: indices.map((rule) => numberOf(answerKey(table, rule))),
    none: numberOf(defaultKey(table)),
    of,
  };
}

/** The answer without a rule in the same terms: a default may be what a rule answers too. */
function defaultKey(table: Table): string {
  const [answer] = decided(table, []).answers;
  return answer ? JSON.stringify(table.outputs.map(({ id }) => answer[id])) : 'none';
}
