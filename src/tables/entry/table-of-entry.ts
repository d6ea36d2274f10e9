/** A table entry → a table, or what is wrong with it and where in the entry. */
import type { TableEntry } from '../../../schemas/index.ts';
import { type ReadTable, readTable } from '../read-table.ts';
import { testForms } from '../sets/read-test.ts';
import type { Table, TableFault, Value, WrittenRule, WrittenTable } from '../table.ts';
import { inputOf, outputOf } from './column-types.ts';
import { feelTest } from './feel-test.ts';

/** What is wrong with an entry: the path of the field, the words, and names that may have been meant. */
export interface EntryFault {
  readonly path: readonly (string | number)[];
  /** Whether it is the name of the field that is wrong, not its value. */
  readonly part: 'key' | 'value';
  readonly message: string;
  readonly help: string;
  /** A name that is not known, and those that are, for “did you mean”. */
  readonly unknown?: { readonly name: string; readonly known: readonly string[] };
}

export interface EntryTable {
  readonly table: ReadTable['table'];
  readonly faults: readonly EntryFault[];
}

/** Reads a table entry: columns, tests, answers. */
export function tableOfEntry(entry: TableEntry): EntryTable {
  const named = [...columnFaults(entry), ...nameFaults(entry)];
  const { table, faults } = readTable(writtenTable(entry));
  const beyond = table ? beyondFaults(table) : [];
  const all = [...named, ...[...faults, ...beyond].map((fault) => placed(entry, fault))];
  return { table: all.length === 0 ? table : undefined, faults: all };
}

/** The entry with its tests in FEEL, not yet read. Columns a rule does not know are left out. */
export function writtenTable(entry: TableEntry): WrittenTable {
  const inputs = entry.inputs.map(inputOf);
  const outputs = entry.outputs.map(outputOf);
  const rules = entry.rules.map(({ id, when, give }): WrittenRule => {
    const tests = inputs.map((input) => feelTest(own(when, input.id) ?? '-', input.type));
    const results = outputs.map((output) => answerValue(own(give, output.id), output.type.kind));
    return { id, tests, results };
  });
  return { name: entry.name, hitPolicy: entry.hit, aggregation: entry.aggregate, inputs, outputs, rules };
}

function own(cells: TableEntry['rules'][number]['when'], key: string): string | number | boolean | undefined {
  return Object.hasOwn(cells, key) ? cells[key] : undefined;
}

function answerValue(value: string | number | boolean | undefined, kind: string): Value {
  if (kind === 'yes-no' && (value === 'yes' || value === 'no')) return value === 'yes';
  return value ?? null;
}

/** Two columns or two rules of one name. */
function* columnFaults({ inputs, outputs, rules }: TableEntry): Generator<EntryFault> {
  for (const [field, all] of Object.entries({ inputs, outputs, rules })) {
    const seen = new Set<string>();
    for (const [index, { id }] of all.entries()) {
      if (seen.has(id)) {
        const message = `There are two ${field} with the id “${id}”.`;
        yield { path: [field, index, 'id'], part: 'value', message, help: 'Give each an id of its own.' };
      }
      seen.add(id);
    }
  }
}

/** Tests of columns that are not there, and answers that are missing. */
function* nameFaults({ inputs, outputs, rules }: TableEntry): Generator<EntryFault> {
  const inputIds = inputs.map(({ id }) => id);
  const outputIds = outputs.map(({ id }) => id);
  for (const [index, { when, give }] of rules.entries()) {
    for (const [field, cells, known] of [
      ['when', when, inputIds],
      ['give', give, outputIds],
    ] as const) {
      for (const name of Object.keys(cells)) {
        if (known.includes(name)) continue;
        const noun = field === 'when' ? 'input' : 'output';
        yield {
          path: ['rules', index, field, name],
          part: 'key',
          message: `This table has no ${noun} “${name}”.`,
          help: `Its ${noun}s are: ${known.join(', ')}.`,
          unknown: { name, known },
        };
      }
    }
    for (const id of outputIds.filter((one) => !Object.hasOwn(give, one))) {
      const message = `This rule gives no answer for “${id}”.`;
      yield { path: ['rules', index, 'give'], part: 'value', message, help: `Add a line: ${id}: …` };
    }
  }
}

/** Tests that are FEEL but no simple ones: what they let through cannot be proved, so entries do without them. */
function beyondFaults({ rules }: Table): TableFault[] {
  return rules.flatMap(({ cells }, rule) =>
    [...cells.entries()]
      .filter(([, { set }]) => set === undefined)
      .map(([column, { text }]) => ({
        rule,
        column,
        in: 'inputs',
        message: `“${text}” is more than a simple test, so nothing can be proved about it.`,
        help: testForms,
      })),
  );
}

function placed(
  { inputs, outputs }: TableEntry,
  { rule, column, in: side, message, help }: TableFault,
): EntryFault {
  const id = (side === 'inputs' ? inputs : outputs)[column ?? -1]?.id;
  const path =
    rule === undefined || id === undefined
      ? [side === 'aggregation' ? 'aggregate' : 'hit']
      : ['rules', rule, side === 'inputs' ? 'when' : 'give', id];
  return { path, part: 'value', message, help };
}
