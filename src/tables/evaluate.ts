/** What a table answers to values that are known exactly. The FEEL library decides which tests hold. */
import { evaluate, unaryTest } from 'feelin';
import { decided } from './decided.ts';
import type { Decided } from './hit-policy.ts';
import type { Given, Table, TableRule, Value, ValueType } from './table.ts';

/** The answer of a table; inputs left out are `null`, which fits a test of any value, `null` itself, or `not(…)`. */
export function evaluateTable(table: Table, given: Given): Decided {
  return decided(table, fittingRules(table, given));
}

/** The rules whose tests all hold, in the order of the table. */
export function fittingRules(table: Table, given: Given): TableRule[] {
  const context = contextOf(table, given);
  return table.rules.filter((rule) =>
    rule.cells.every((cell, index) => {
      const input = table.inputs[index];
      return input !== undefined && testHolds(cell.text, context[input.id] ?? null, context);
    }),
  );
}

/** Whether a unary test lets a value through; other values it may name come from `context`. */
export function testHolds(test: string, value: unknown, context: Readonly<Record<string, unknown>>): boolean {
  return unaryTest(test, { ...context, '?': value }).value === true;
}

function contextOf(table: Table, given: Given): Record<string, unknown> {
  return Object.fromEntries(
    table.inputs.map(({ id, type }) => [id, feelValue(given[id] ?? null, type)] as const),
  );
}

/** A value as the FEEL library takes it: dates are objects of its own. */
export function feelValue(value: Value, type: ValueType): unknown {
  if (type.kind !== 'date' || typeof value !== 'string') return value;
  return evaluate(`date(${JSON.stringify(value)})`).value;
}
