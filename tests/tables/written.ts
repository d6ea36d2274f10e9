/** Small tables for tests. */
import {
  readTable,
  type Table,
  type TableInput,
  type Value,
  type ValueType,
} from '../../src/tables/index.ts';

export const number: ValueType = { kind: 'number' };

export function input(id: string, type: ValueType = number, mayBeMissing = false): TableInput {
  return { id, label: id, type, mayBeMissing };
}

/** A table with one output, `answer`, of text or of number by its results; a row is its tests, then its answer. */
export function table(
  hitPolicy: Table['hitPolicy'],
  inputs: readonly TableInput[],
  rows: readonly (readonly [...tests: string[], result: Value])[],
  more: { aggregation?: Table['aggregation']; priorities?: readonly Value[]; otherwise?: Value } = {},
): Table {
  const results = rows.map((row) => row.at(-1) ?? null);
  const type: ValueType = results.some((one) => typeof one === 'number') ? number : { kind: 'text' };
  const output = { id: 'answer', label: 'Answer', type };
  const { table: read, faults } = readTable({
    name: 'test',
    hitPolicy,
    aggregation: more.aggregation,
    inputs,
    outputs: [{ ...output, priorities: more.priorities ?? [], otherwise: more.otherwise }],
    rules: rows.map((row, index) => ({
      id: `r${index + 1}`,
      tests: row.slice(0, -1).map(String),
      results: [row.at(-1) ?? null],
    })),
  });
  if (!read) throw new Error(JSON.stringify(faults));
  return read;
}
