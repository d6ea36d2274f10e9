/** A decision of a DMN file as a table that can be analysed, where it is a simple one. */

import type { FileFault, Span } from '../file-fault.ts';
import { readTable } from '../read-table.ts';
import { readTest } from '../sets/read-test.ts';
import type { Table, TableFault, Value, ValueType, WrittenTable } from '../table.ts';
import { isPlainName } from './decide-chain.ts';
import { literalOf } from './feel-text.ts';
import { columnType } from './feel-type.ts';
import type { DmnDecision, DmnFile, DmnTable, FeelText, FeelType } from './model.ts';

export interface TableOfDecision {
  /** Undefined where it is no simple table, or has faults. */
  readonly table: Table | undefined;
  /** The same before its tests are read: what an entry is written from. */
  readonly written: WrittenTable | undefined;
  readonly faults: readonly FileFault[];
  /** Why it can be evaluated only, and where; undefined where it is a simple table. */
  readonly beyond: { readonly message: string; readonly span: Span } | undefined;
  /** Where the parts of the table stand. */
  readonly spanOf: (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;
}

/** Thrown within this file only. */
class Beyond extends Error {
  readonly span: Span;
  constructor(span: Span, message: string) {
    super(message);
    this.span = span;
  }
}

export function tableOfDecision(file: DmnFile, decision: DmnDecision): TableOfDecision {
  const { logic } = decision;
  const spanOf = spansOf(decision);
  const none = { table: undefined, written: undefined, faults: [], spanOf };
  if (logic.kind !== 'table') {
    return { ...none, beyond: { message: 'It is an expression, not a table.', span: logic.span } };
  }
  try {
    const written = writtenTable(file, decision, logic);
    const { table, faults } = readTable(written);
    const found = faults.map((fault) => ({
      span: spanOf(fault),
      message: fault.message,
      help: fault.help,
    }));
    return { table, written, faults: found, beyond: undefined, spanOf };
  } catch (error) {
    if (!(error instanceof Beyond)) throw error;
    return { ...none, beyond: { message: error.message, span: error.span } };
  }
}

function spansOf(decision: DmnDecision): TableOfDecision['spanOf'] {
  const { logic } = decision;
  if (logic.kind !== 'table') return () => logic.span;
  return ({ rule, column, in: where }) => {
    if (rule !== undefined) {
      const found = logic.rules[rule];
      const cells = where === 'outputs' ? found?.results : found?.tests;
      return (column === undefined ? undefined : cells?.[column]?.span) ?? found?.span ?? logic.span;
    }
    const head =
      column === undefined
        ? undefined
        : where === 'outputs'
          ? logic.outputs[column]?.span
          : logic.inputs[column]?.expression.span;
    return head ?? logic.span;
  };
}

function writtenTable(file: DmnFile, decision: DmnDecision, logic: DmnTable): WrittenTable {
  const names = new Set<string>();
  const inputs = logic.inputs.map((column, index) => {
    const { text, span } = column.expression;
    const isName = isPlainName(text) || [...file.inputs, ...file.decisions].some(({ name }) => name === text);
    if (!isName) throw new Beyond(span, `“${text}” is more than the name of an input.`);
    if (names.has(text)) throw new Beyond(span, `“${text}” is tested in two columns.`);
    names.add(text);
    const tests = logic.rules.map((rule) => rule.tests[index]?.text ?? '-');
    const drawn = file.inputs.find(({ name }) => name === text);
    const type = inputType([column.type, drawn?.type], tests);
    if (!type) throw new Beyond(span, `“${text}” is of a type that tables here do not have.`);
    return { id: text, label: column.label, type, mayBeMissing: column.mayBeMissing };
  });
  const rules = logic.rules.map(({ id, tests, results }) => ({
    id,
    tests: tests.map(({ text }) => text),
    results: results.map(literal),
  }));
  const outputs = logic.outputs.map((output, index) => ({
    id: output.name || decision.name,
    label: output.label,
    type: outputType(
      output.type,
      rules.map(({ results }) => results[index] ?? null),
      output.span,
    ),
    priorities: output.priorities,
    otherwise: output.otherwise && literal(output.otherwise),
  }));
  const { hitPolicy, aggregation } = logic;
  return { name: decision.label, hitPolicy, aggregation, inputs, outputs, rules };
}

function literal({ text, span }: FeelText): Value {
  if (text === '') return null;
  const value = literalOf(text);
  if (value === undefined) throw new Beyond(span, `“${text}” is an expression, not a value.`);
  return value;
}

/** The first of the types given that says something; where none does, the one all tests are of. */
function inputType(
  given: readonly (FeelType | undefined)[],
  tests: readonly string[],
): ValueType | undefined {
  const said = given.find((one) => one !== undefined && one.kind !== 'any');
  if (said) return columnType(said);
  const candidates: readonly ValueType[] = [
    { kind: 'number' },
    { kind: 'text' },
    { kind: 'yes-no' },
    { kind: 'date' },
  ];
  return candidates.find((type) => tests.every((test) => readTest(test, type).fault === undefined));
}

function outputType(given: FeelType, values: readonly Value[], span: Span): ValueType {
  const column = columnType(given);
  if (column) return column;
  if (given.kind !== 'any') throw new Beyond(span, 'Its answers are of a type that tables here do not have.');
  const known = values.filter((one) => one !== null);
  if (known.every((one) => typeof one === 'number')) return { kind: 'number' };
  if (known.every((one) => typeof one === 'boolean')) return { kind: 'yes-no' };
  if (known.every((one) => typeof one === 'string')) return { kind: 'text' };
  throw new Beyond(span, 'Its answers are of more than one type.');
}
