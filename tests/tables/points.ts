/** A table evaluated at every point, each test by the FEEL library: what analysis is held against. */
import { feelValue, testHolds } from '../../src/tables/evaluate.ts';
import {
  type Box,
  type Decided,
  decided,
  type Given,
  type Table,
  type TableInput,
  type TableRule,
  type Value,
} from '../../src/tables/index.ts';
import { daysOf } from '../../src/tables/sets/days.ts';
import { holds } from '../../src/tables/sets/value-set.ts';
import { valuesOf } from './random-tables.ts';

export interface Point {
  readonly values: readonly Value[];
  readonly fitting: readonly TableRule[];
  readonly decided: Decided;
}

const known = new Map<string, boolean>();

/** The library’s word on a test and a value, asked once. */
function passes(test: string, value: Value, { type }: TableInput): boolean {
  const key = `${type.kind} ${test} ${JSON.stringify(value)}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const now = testHolds(test, feelValue(value, type), {});
  known.set(key, now);
  return now;
}

/** Every combination of values that between them lie in every piece. */
export function combinations(inputs: readonly TableInput[]): Value[][] {
  return inputs.reduce<Value[][]>(
    (before, input) => before.flatMap((values) => valuesOf(input).map((value) => [...values, value])),
    [[]],
  );
}

export function pointsOf(table: Table): Point[] {
  return combinations(table.inputs).map((values) => {
    const fitting = fittingAt(table, values);
    return { values, fitting, decided: decided(table, fitting) };
  });
}

function fittingAt({ rules, inputs }: Table, values: readonly Value[]): TableRule[] {
  return rules.filter(({ cells }) =>
    cells.every(({ text }, index) => passes(text, values[index] ?? null, inputs[index] as TableInput)),
  );
}

export function inBox({ sets }: Box, values: readonly Value[], { inputs }: Table): boolean {
  return sets.every((set, index) => {
    const value = values[index] ?? null;
    const isDate = inputs[index]?.type.kind === 'date' && typeof value === 'string';
    return holds(set, isDate ? (daysOf(value) ?? null) : value);
  });
}

export const givenOf = ({ inputs }: Table, values: readonly Value[]): Given =>
  Object.fromEntries(inputs.map(({ id }, index) => [id, values[index] ?? null]));

/** What a table says, without which rules it comes from; the order of what `collect` lists is arbitrary. */
export function saidOf({ hitPolicy }: Table, { answers, broken }: Decided): string {
  if (broken !== undefined) return 'broken';
  const texts = answers.map((answer) => JSON.stringify(answer));
  return (hitPolicy === 'collect' ? texts.sort() : texts).join(' ');
}
