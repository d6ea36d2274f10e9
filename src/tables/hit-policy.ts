/** What the rules that fit come to, by the hit policy of their table (DMN 1.3, 8.2.10 and 8.2.11). */
import type { Table, TableRule, Value } from './table.ts';

/** What of a table its answers follow from, once it is known which rules fit. */
export type Answering = Pick<Table, 'hitPolicy' | 'aggregation' | 'outputs'>;
export type Fitting = Pick<TableRule, 'id' | 'results'>;

/** One answer: a value an output. */
export type Answer = Readonly<Record<string, Value>>;

export interface Decided {
  /**
   * The answers in their order: none or one of a policy that gives a single answer or of an aggregation, any number
   * of the others.
   */
  readonly answers: readonly Answer[];
  /** The ids of the rules the answers come from, in the order of the table. */
  readonly rules: readonly string[];
  /** What is wrong, where the rules that fit break the policy; there is no answer then. */
  readonly broken: string | undefined;
}

/** Whether a table answers with a list (DMN 1.3, 8.2.10). */
export function givesList({ hitPolicy, aggregation }: Pick<Table, 'hitPolicy' | 'aggregation'>): boolean {
  return (
    hitPolicy === 'output order' ||
    hitPolicy === 'rule order' ||
    (hitPolicy === 'collect' && aggregation === undefined)
  );
}

/**
 * What comes of the rules that fit where nothing is aggregated, as for every answer that is no number.
 * @param fitting the rules whose tests all hold, in the order of the table.
 */
export function listed(table: Answering, fitting: readonly Fitting[]): Decided {
  const ids = fitting.map(({ id }) => id);
  if (fitting.length === 0) return withoutHit(table);
  const [first] = fitting;
  switch (table.hitPolicy) {
    case 'unique':
      if (fitting.length > 1) {
        return broken(ids, `${fitting.length} rules fit, but only one may: the hit policy is “unique”.`);
      }
      return { answers: fitting.map((rule) => answerOf(table, rule)), rules: ids, broken: undefined };
    case 'any': {
      const answers = new Set(fitting.map((rule) => JSON.stringify(rule.results)));
      if (answers.size > 1)
        return broken(ids, 'Rules that fit give different answers: the hit policy is “any”.');
      return { answers: first ? [answerOf(table, first)] : [], rules: ids, broken: undefined };
    }
    case 'first':
      return first ? single(table, first) : withoutHit(table);
    case 'priority': {
      const [top] = byPriority(table, fitting);
      return top ? single(table, top) : withoutHit(table);
    }
    case 'output order':
      return several(table, byPriority(table, fitting));
    case 'rule order':
    case 'collect':
      return several(table, fitting);
  }
}

function single(table: Answering, rule: Fitting): Decided {
  return { answers: [answerOf(table, rule)], rules: [rule.id], broken: undefined };
}

function several(table: Answering, rules: readonly Fitting[]): Decided {
  return {
    answers: rules.map((rule) => answerOf(table, rule)),
    rules: rules.map(({ id }) => id),
    broken: undefined,
  };
}

function broken(rules: readonly string[], message: string): Decided {
  return { answers: [], rules, broken: message };
}

/** With no rule that fits, each output is its default, if it has one (DMN 1.3, 8.2.10). */
function withoutHit(table: Answering): Decided {
  const none = { rules: [], broken: undefined };
  if (table.outputs.every(({ otherwise }) => otherwise === undefined)) return { answers: [], ...none };
  const answer = Object.fromEntries(table.outputs.map(({ id, otherwise }) => [id, otherwise ?? null]));
  return { answers: [answer], ...none };
}

function answerOf(table: Answering, rule: Fitting): Answer {
  return Object.fromEntries(table.outputs.map(({ id }, index) => [id, rule.results[index] ?? null]));
}

/** By the place of each answer in its output’s list, first output first; equal ones stay in the order of the table. */
function byPriority(table: Answering, rules: readonly Fitting[]): Fitting[] {
  return [...rules].sort((a, b) => comparePriority(table, a, b));
}

/** Negative where `a` goes before `b` by the lists of priorities, positive where after, 0 where they are equal. */
export function comparePriority(table: Answering, a: Fitting, b: Fitting): number {
  for (const [index, { priorities }] of table.outputs.entries()) {
    const place = (rule: Fitting): number => {
      const found = priorities.indexOf(rule.results[index] ?? null);
      return found < 0 ? priorities.length : found;
    };
    const difference = place(a) - place(b);
    if (difference !== 0) return difference;
  }
  return 0;
}
