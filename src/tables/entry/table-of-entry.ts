/** A table entry → a table, or what is wrong with it and where in the entry. */
import type { TableEntry } from '../../../schemas/index.ts';
import { type ReadTable, readTable } from '../read-table.ts';
import { testForms } from '../sets/read-test.ts';
import type { Table, TableFault, TableInput, Value, WrittenRule, WrittenTable } from '../table.ts';
import { inputOf, outputOf } from './column-types.ts';
import { type EntryFault, type EntryPath, joinedFaults } from './entry-fault.ts';
import { feelTest } from './feel-test.ts';
import { repeatedIds, unknownNames } from './name-faults.ts';
import { wordFault } from './word-faults.ts';

export interface EntryTable {
  readonly table: ReadTable['table'];
  readonly faults: readonly EntryFault[];
}

/** Entries do not change, and reading hundreds of tests takes its time. */
const alreadyRead = new WeakMap<TableEntry, EntryTable>();

/** Reads a table entry: columns, tests, answers. */
export function tableOfEntry(entry: TableEntry): EntryTable {
  const known = alreadyRead.get(entry);
  if (known) return known;
  const read = readEntry(entry);
  alreadyRead.set(entry, read);
  return read;
}

function readEntry(entry: TableEntry): EntryTable {
  const inputs = entry.inputs.map(inputOf);
  const slips = [...slipsOf(entry, inputs)];
  const named = new Set(slips.map(({ path }) => pathKey(path)));
  const { table, faults } = readTable(writtenTable(entry));
  const beyond = table ? beyondFaults(table) : [];
  const read = [...faults, ...beyond]
    .map((fault) => placed(entry, fault))
    .filter(({ path }) => !named.has(pathKey(path)));
  const all = joinedFaults([...repeatedIds(entry), ...unknownNames(entry), ...slips, ...read]);
  return { table: all.length === 0 ? table : undefined, faults: all };
}

function pathKey(path: EntryPath): string {
  return JSON.stringify(path);
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

/** What can be told from a test as it is written. */
function* slipsOf({ rules }: TableEntry, inputs: readonly TableInput[]): Generator<EntryFault> {
  for (const [index, { when }] of rules.entries()) {
    for (const { id, type } of inputs) {
      const written = own(when, id);
      const fault = written === undefined ? undefined : wordFault(String(written), type);
      if (fault) yield { path: ['rules', index, 'when', id], part: 'value', ...fault };
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

function placed(entry: TableEntry, { rule, column, in: side, message, help }: TableFault): EntryFault {
  const { inputs, outputs } = entry;
  const id = (side === 'inputs' ? inputs : outputs)[column ?? -1]?.id;
  if (rule === undefined || id === undefined) {
    return { path: [side === 'aggregation' ? 'aggregate' : 'hit'], part: 'value', message, help };
  }
  const path = ['rules', rule, side === 'inputs' ? 'when' : 'give', id];
  const fault = { path, part: 'value', message, help } as const;
  return side === 'outputs' ? { ...fault, ...answerAdvice(entry, rule, column ?? -1) } : fault;
}

/** What to write for an answer that does not fit: the nearest one of the list, or the number without its quotes. */
function answerAdvice(
  { outputs, rules }: TableEntry,
  rule: number,
  column: number,
): Pick<EntryFault, 'unknown'> | Pick<EntryFault, 'help'> {
  const output = outputs[column];
  const value = output && own(rules[rule]?.give ?? {}, output.id);
  if (output?.holds === 'choice' && value !== undefined) {
    return { unknown: { name: String(value), known: output.values } };
  }
  if (output?.holds === 'number' && typeof value === 'string') {
    const number = /^\s*(-?\d+(?:\.\d+)?)/.exec(value)?.[1];
    const unit = output.unit === undefined ? '' : `: the column is in ${output.unit}`;
    if (number !== undefined) return { help: `Write the number alone, without quotes${unit}: ${number}.` };
  }
  return output?.holds === 'yes-no' ? { help: 'Write yes or no.' } : { help: 'Write one text.' };
}
