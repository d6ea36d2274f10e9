/** A table of another program as the text of an entry, and what has to be filled in by hand. */
import { stringify } from 'yaml';
import { tableSchema } from '../../../schemas/index.ts';
import { schemaComment } from '../../base/index.ts';
import { idFor, valuesByPriority } from '../../tables/dmn/index.ts';
import { CannotExport, type Span, UnusableFile } from '../../tables/file-fault.ts';
import {
  type TableFault,
  type TableInput,
  type TableOutput,
  tableOfEntry,
  type Value,
  type WrittenTable,
  writtenTest,
} from '../../tables/index.ts';

export interface ImportedEntry {
  readonly text: string;
  readonly fillIn: string[];
}

export interface Imported {
  /** Its columns go by ids of entries. */
  readonly written: WrittenTable;
  readonly name: string;
  readonly question: string | undefined;
  /** What rules say, by rule id. */
  readonly says: Readonly<Record<string, string | undefined>>;
  /** The name of the file it comes from. */
  readonly from: string;
  readonly spanOf: (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;
}

/** Stands where the sources belong: the check finds no such source, so that it cannot be forgotten. */
export const sourceToFillIn = 'to-be-filled-in';

/** @throws UnusableFile where an entry has no place for something that decides. */
export function importedEntry(imported: Imported): ImportedEntry {
  const { written, question, from } = imported;
  const fillIn = [
    `sources: what the table rests on, instead of “${sourceToFillIn}”. The check finds fault with it until then.`,
    'about: what it decides, and what it leaves out.',
    ...(question === undefined ? ['question: the question it answers, in the rider’s words.'] : []),
    'order: its place in lists.',
    `inputs: how riders are asked for ${written.inputs.map(({ label }) => `“${label}”`).join(', ')}; where a value is computed from readings or is a fact about the profile, “holds: characteristic” or “holds: trait” with its name instead.`,
  ];
  const missing = written.inputs.filter(({ mayBeMissing }) => mayBeMissing).map(({ label }) => `“${label}”`);
  if (missing.length > 0) {
    fillIn.push(
      `mayBeMissing: rules of ${missing.join(', ')} have something to say of what is not known, which only characteristics and traits can be.`,
    );
  }
  const name = oneLine(imported.name, 300);
  const entry = {
    name,
    question: question === undefined ? `What of “${name.slice(0, 250)}”?` : oneLine(question, 300),
    about: `Imported from ${from}.`,
    order: 500,
    hit: written.hitPolicy,
    ...(written.aggregation === undefined ? {} : { aggregate: written.aggregation }),
    inputs: written.inputs.map((input, column) => inputEntry(input, imported, column)),
    outputs: written.outputs.map((output, column) => outputEntry(output, imported, column)),
    rules: ruleEntries(imported),
    sources: [sourceToFillIn],
  };
  const { faults } = tableOfEntry(tableSchema.parse(entry));
  const [fault] = faults;
  if (fault) {
    const [part, index, , id] = fault.path;
    const rule = part === 'rules' && typeof index === 'number' ? index : undefined;
    const column = written.inputs.findIndex((one) => one.id === id);
    const span = imported.spanOf({ rule, column: column < 0 ? undefined : column, in: 'inputs' });
    throw new UnusableFile(span, fault.message, fault.help);
  }
  const yaml = stringify(entry, { lineWidth: 110, flowCollectionPadding: true });
  return { text: schemaComment('../../schemas/json/table.schema.json') + yaml, fillIn };
}

function oneLine(text: string, most: number): string {
  return text.replace(/\s+/g, ' ').trim().slice(0, most);
}

function inputEntry({ id, label, type }: TableInput, { spanOf }: Imported, column: number): object {
  const asked = { id, label: oneLine(label, 300), holds: type.kind, question: `${oneLine(label, 290)}?` };
  switch (type.kind) {
    case 'number': {
      const { unit, least, most, whole } = type;
      return { ...asked, ...defined({ unit, least, most }), ...(whole ? { whole } : {}) };
    }
    case 'date':
      return { ...asked, ...defined({ least: type.least, most: type.most }) };
    case 'yes-no':
      return asked;
    case 'choice':
      if (type.values.length > 1) return { ...asked, values: type.values };
      throw new UnusableFile(
        spanOf({ rule: undefined, column, in: 'inputs' }),
        `“${label}” can only be “${type.values[0]}”, and so is no choice.`,
        'List what else it can be, or leave the column out.',
      );
    case 'text':
      throw new UnusableFile(
        spanOf({ rule: undefined, column, in: 'inputs' }),
        `“${label}” can be any text, but an entry asks for one of several.`,
        'List what it can be: in DMN as the input values of the column, in CSV in its brackets, as (fixed | fading).',
      );
  }
}

function outputEntry(output: TableOutput, { written, spanOf }: Imported, column: number): object {
  const { id, label, type, otherwise } = output;
  const entry = { id, label: oneLine(label, 300) };
  const rest = otherwise === undefined || otherwise === null ? {} : { otherwise };
  const orders = written.hitPolicy === 'priority' || written.hitPolicy === 'output order';
  const refuse = (message: string, help: string): UnusableFile =>
    new UnusableFile(spanOf({ rule: undefined, column, in: 'outputs' }), message, help);
  if (orders && type.kind !== 'choice' && output.priorities.length > 0) {
    throw refuse(
      `“${label}” is no choice, and only the values of a choice have an order.`,
      'List its values.',
    );
  }
  if (type.kind === 'choice' && type.values.length > 1) {
    try {
      const values = orders ? valuesByPriority(label, type.values, output.priorities) : type.values;
      return { ...entry, holds: 'choice', values, ...rest };
    } catch (error) {
      if (error instanceof CannotExport) throw refuse(error.message, error.help);
      throw error;
    }
  }
  if (type.kind === 'number') return { ...entry, holds: 'number', ...defined({ unit: type.unit }), ...rest };
  if (type.kind === 'yes-no') return { ...entry, holds: 'yes-no', ...rest };
  return { ...entry, holds: 'text', ...rest };
}

function ruleEntries({ written, says, spanOf }: Imported): object[] {
  const taken = new Set<string>();
  return written.rules.map((rule, index) => {
    const wanted = idFor(/^\d+$/.test(rule.id) ? `rule-${rule.id}` : rule.id);
    let id = wanted;
    for (let number = 2; taken.has(id); number += 1) id = `${wanted}-${number}`;
    taken.add(id);
    const when = written.inputs.flatMap((input, column): [string, string][] => {
      const test = rule.tests[column] ?? '-';
      return test === '-' ? [] : [[input.id, writtenTest(test, input.type)]];
    });
    const give = written.outputs.map((output, column): [string, Value] => {
      const value = rule.results[column] ?? null;
      if (value !== null) return [output.id, value];
      throw new UnusableFile(
        spanOf({ rule: index, column, in: 'outputs' }),
        `The rule “${rule.id}” gives nothing for “${output.label}”, but the rules of an entry answer every output.`,
        'Write an answer, such as “none”.',
      );
    });
    const say = says[rule.id]?.trim();
    return {
      id,
      when: Object.fromEntries(when),
      give: Object.fromEntries(give),
      ...(say ? { say: say.slice(0, 2000) } : {}),
    };
  });
}

function defined(values: Readonly<Record<string, string | number | undefined>>): object {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}
