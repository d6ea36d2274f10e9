/** Decision tables as CSV, to be edited in a spreadsheet: a row a rule, a column an input or an output. */
import { unaryTest } from 'feelin';
import { type CsvCell, type CsvFile, csvCell, csvCells } from './csv-cells.ts';
import { type Head, headHelp, headText, policyText, readHead, readPolicy } from './csv-head.ts';
import { feelLiteral, unquoted } from './dmn/feel-text.ts';
import { renamed } from './dmn/names.ts';
import { valuesByPriority } from './dmn/priorities.ts';
import { feelTest } from './entry/feel-test.ts';
import { writtenTest } from './entry/written-test.ts';
import { CannotExport, type FileFault, type Span, UnusableFile } from './file-fault.ts';
import { readTable } from './read-table.ts';
import { daysOf } from './sets/days.ts';
import { heldBy, readTest } from './sets/read-test.ts';
import type { Table, TableFault, TableOutput, Value, ValueType, WrittenRule, WrittenTable } from './table.ts';

/** Stands in the first column of the row that holds the default answers. No rule can be called so. */
export const otherwiseRow = 'if no rule fits';

export interface TableOfCsv {
  /** Undefined where there are faults. */
  readonly table: Table | undefined;
  readonly written: WrittenTable | undefined;
  /** What rules say, by rule id. */
  readonly says: Readonly<Record<string, string>>;
  readonly faults: readonly FileFault[];
  readonly spanOf: (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;
}

/**
 * A table as CSV, with commas and CRLF line ends (RFC 4180). Labels are left out: columns go by their ids. Cells a
 * spreadsheet would run get an apostrophe, which {@link rowsFromCsv} takes away again.
 * @throws CannotExport where a rule goes by the name of the default row, or an answer has no place in the order of
 *   priorities.
 */
export function rowsToCsv(table: Table, says: Readonly<Record<string, string | undefined>> = {}): string {
  if (table.rules.some(({ id }) => id === otherwiseRow)) {
    throw new CannotExport(`A rule is called “${otherwiseRow}”, which means the defaults.`, 'Rename it.');
  }
  const head = [
    policyText(table.hitPolicy, table.aggregation),
    ...table.inputs.map(({ id, type, mayBeMissing }) => headText({ kind: 'when', id, type, mayBeMissing })),
    ...table.outputs.map((output) => {
      const type = withPriorities(output, table);
      return headText({ kind: 'give', id: output.id, type, mayBeMissing: false });
    }),
    'say',
  ];
  const rules = table.rules.map(({ id, cells, results }) => [
    id,
    ...cells.map(({ text }, index) => plainTest(text, table.inputs[index]?.type ?? { kind: 'text' })),
    ...results.map((value, index) => answerText(value, table.outputs[index]?.type)),
    says[id] ?? '',
  ]);
  const otherwise = table.outputs.some((output) => output.otherwise !== undefined)
    ? [
        [
          otherwiseRow,
          ...table.inputs.map(() => ''),
          ...table.outputs.map((output) => answerText(output.otherwise ?? null, output.type)),
          '',
        ],
      ]
    : [];
  return [head, ...rules, ...otherwise].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

/** A choice with its values in the order of their priority, as in CSV their order is their priority. */
function withPriorities(output: TableOutput, { hitPolicy }: Table): ValueType {
  const { label, type, priorities } = output;
  if (hitPolicy !== 'priority' && hitPolicy !== 'output order') return type;
  if (type.kind !== 'choice') {
    if (priorities.length === 0) return type;
    const message = `“${label}” is no choice, and in CSV only the values of a choice have an order.`;
    throw new CannotExport(message, 'Export it as DMN.');
  }
  return { kind: 'choice', values: valuesByPriority(label, type.values, priorities) };
}

/** The test as people write it where that comes to the same: `fixed, fading`, `yes`, `< 2026-03-14`. */
function plainTest(text: string, type: ValueType): string {
  // A list written close together could be taken for a number with a decimal comma.
  const apart = text.replace(/"(?:[^"\\]|\\.)*"|,(?=\S)/g, (found) => (found === ',' ? ', ' : found));
  const plain = writtenTest(apart, type);
  const same = (a: string, b: string): boolean => a.replace(/\s/g, '') === b.replace(/\s/g, '');
  return same(feelTest(plain, type), apart) ? plain : apart;
}

function answerText(value: Value, type: ValueType | undefined): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return feelLiteral(value, { kind: 'number' });
  const plain = value !== '' && value === value.trim() && !value.startsWith('"') && !/[\r\n]/.test(value);
  return plain || type?.kind === 'date' ? value : JSON.stringify(value);
}

interface Column {
  readonly head: Head;
  readonly at: number;
  readonly span: Span;
}

/**
 * Reads a table from CSV, whether its cells are set apart by commas, semicolons or tabs.
 * @throws UnusableFile where the file as a whole cannot be read.
 */
export function rowsFromCsv(text: string, name: string): TableOfCsv {
  const file = csvCells(text);
  const [head, ...rows] = file.rows;
  if (!head) throw new UnusableFile({ start: 0, end: 0 }, 'The file is empty.', headHelp);
  const reader = new CsvReader(file, head, rows, name);
  return reader.read();
}

class CsvReader {
  readonly #file: CsvFile;
  readonly #head: readonly CsvCell[];
  readonly #rows: readonly (readonly CsvCell[])[];
  readonly #name: string;
  readonly #faults: FileFault[] = [];

  constructor(file: CsvFile, head: readonly CsvCell[], rows: CsvFile['rows'], name: string) {
    this.#file = file;
    this.#head = head;
    this.#rows = rows;
    this.#name = name;
  }

  read(): TableOfCsv {
    const { columns, ruleAt, sayAt, policy } = this.#readHead();
    const headIsRead = this.#faults.length === 0;
    const whens = columns.filter(({ head }) => head.kind === 'when');
    const gives = columns.filter(({ head }) => head.kind === 'give');
    const body = this.#rows.filter((row) => !this.#isOtherwise(row, ruleAt));
    const last = this.#rows.filter((row) => this.#isOtherwise(row, ruleAt));
    if (last[1]) this.#fault(last[1][ruleAt ?? 0], 'There are two rows of defaults.', 'Keep one.');
    if (body.length === 0) this.#fault(this.#head[0], 'There is no rule.', 'Write a row for each rule.');
    this.#longRows();
    const inputs = whens.map(({ head, at }) => {
      const type = head.type ?? this.#testsType(body, at);
      return { id: head.id, label: labelOf(head.id), type, mayBeMissing: head.mayBeMissing };
    });
    const outputs = gives.map(({ head, at }) => {
      const type = head.type ?? this.#answersType(this.#rows, at);
      const priorities = type.kind === 'choice' ? type.values : [];
      const given = last[0]?.[at];
      const otherwise = given && given.text !== '' ? this.#answer(given, type) : undefined;
      return { id: head.id, label: labelOf(head.id), type, priorities, otherwise };
    });
    const names = new Map(inputs.map(({ id }) => [id.replaceAll('-', ' '), id] as const));
    const says: Record<string, string> = {};
    const seen = new Set<string>();
    const rules = body.map((row, index): WrittenRule => {
      const cell = ruleAt === undefined ? undefined : row[ruleAt];
      const id = cell && cell.text !== '' ? cell.text : `rule-${index + 1}`;
      if (seen.has(id)) this.#fault(cell ?? row[0], `Two rules are called “${id}”.`, 'Rename one.');
      seen.add(id);
      const said = sayAt === undefined ? undefined : row[sayAt]?.text;
      if (said) says[id] = said.startsWith('"') ? unquoted(said) : said;
      return {
        id,
        tests: whens.map(({ at }, column) => this.#test(row[at], inputs[column]?.type, names)),
        results: gives.map(({ at }, column) => {
          const given = row[at];
          const type = outputs[column]?.type;
          return given && type ? this.#answer(given, type) : null;
        }),
      };
    });
    const written: WrittenTable = { name: this.#name, ...policy, inputs, outputs, rules };
    const spanOf: TableOfCsv['spanOf'] = ({ rule, column, in: side }) => {
      const { at, span } = (side === 'outputs' ? gives : whens)[column ?? -1] ?? {};
      const row = rule === undefined ? undefined : body[rule];
      return (row && (row[at ?? ruleAt ?? 0] ?? row.at(-1))?.span) ?? span ?? this.#head[0]?.span ?? nowhere;
    };
    // A head that cannot be read leaves columns out: what else is wrong would be told in vain.
    const { table, faults } = headIsRead ? readTable(written) : { table: undefined, faults: [] };
    const placed = faults.map((fault) => ({ span: spanOf(fault), message: fault.message, help: fault.help }));
    const all = [...this.#faults, ...placed].sort((a, b) => a.span.start - b.span.start);
    const whole = all.length === 0 ? { table, written } : { table: undefined, written: undefined };
    return { ...whole, says, faults: all, spanOf };
  }

  #fault(cell: CsvCell | undefined, message: string, help: string): void {
    this.#faults.push({ span: cell?.span ?? nowhere, message, help });
  }

  #readHead(): {
    columns: Column[];
    ruleAt: number | undefined;
    sayAt: number | undefined;
    policy: Pick<WrittenTable, 'hitPolicy' | 'aggregation'>;
  } {
    const columns: Column[] = [];
    let ruleAt: number | undefined;
    let sayAt: number | undefined;
    let policy: Pick<WrittenTable, 'hitPolicy' | 'aggregation'> = {
      hitPolicy: 'unique',
      aggregation: undefined,
    };
    for (const [at, cell] of this.#head.entries()) {
      const { text, span } = cell;
      if (/^rule\b/i.test(text) && ruleAt === undefined) {
        ruleAt = at;
        const said = readPolicy(text);
        if (said) policy = said;
        else {
          const help =
            'After “rule:” stands unique, any, priority, first, rule order, output order, collect, or collect with sum, min, max or count.';
          this.#fault(cell, `“${text}” names no hit policy.`, help);
        }
      } else if (/^say$/i.test(text) && sayAt === undefined) sayAt = at;
      else if (text === '') {
        const used = this.#rows.find((row) => (row[at]?.text ?? '') !== '');
        if (used) this.#fault(used[at], 'This cell stands in a column without a head.', headHelp);
      } else {
        const head = readHead(text);
        if (head.kind === 'fault') this.#fault(cell, head.message, head.help);
        else if (columns.some((one) => one.head.kind === head.kind && one.head.id === head.id)) {
          this.#fault(cell, `There are two columns “${text}”.`, 'Rename one, or join them.');
        } else columns.push({ head, at, span });
      }
    }
    if (this.#faults.length === 0) {
      for (const kind of ['when', 'give'] as const) {
        if (columns.some(({ head }) => head.kind === kind)) continue;
        this.#fault(this.#head[0], `No column begins with “${kind}:”.`, headHelp);
      }
    }
    return { columns, ruleAt, sayAt, policy };
  }

  #isOtherwise(row: readonly CsvCell[], ruleAt: number | undefined): boolean {
    return ruleAt !== undefined && row[ruleAt]?.text.toLowerCase() === otherwiseRow;
  }

  /** A cell beyond the last head is most often a comma that was not quoted. */
  #longRows(): void {
    for (const row of this.#rows) {
      const beyond = row.slice(this.#head.length).find(({ text }) => text !== '');
      if (!beyond) continue;
      const message = `This row has ${row.length} cells, but the first row has ${this.#head.length}.`;
      this.#fault(beyond, message, 'Put cells that hold a comma or semicolon in quotation marks.');
    }
  }

  #test(cell: CsvCell | undefined, type: ValueType | undefined, names: ReadonlyMap<string, string>): string {
    if (!cell || cell.text === '') return '-';
    if (!type) return cell.text;
    if (type.kind === 'number' && this.#isUnclear(cell)) return '-';
    const text = type.kind === 'yes-no' ? cell.text.toLowerCase() : cell.text;
    const test = feelTest(text, type);
    if (readTest(test, type).beyond === undefined) return test;
    const expression = renamed(test, names);
    const unknown = unknownName(expression, names.values());
    if (unknown !== undefined) {
      const message = `“${unknown}” is neither a value of this column nor the name of another.`;
      this.#fault(cell, message, `This column holds ${heldBy(type)}.`);
    }
    return expression;
  }

  /** A comma between digits is a decimal comma, or one of thousands, or sets two values apart: it is not guessed at. */
  #isUnclear(cell: CsvCell): boolean {
    const comma = /(?<![\w.])\d+,\d+|\d\.\d+,\d+(?!\d*\.)/.exec(cell.text)?.[0];
    if (comma !== undefined) {
      this.#fault(
        cell,
        `“${comma}” can be one number with a decimal comma, or two numbers.`,
        `Write a number with a point, ${comma.replace(',', '.')}, and several with a blank after the comma, ${comma.replace(',', ', ')}.`,
      );
      return true;
    }
    const thousands =
      this.#file.delimiter === ';' ? /(?<![\w.,])\d{1,3}\.\d{3}(?![\d.])/.exec(cell.text)?.[0] : undefined;
    if (thousands === undefined) return false;
    this.#fault(
      cell,
      `“${thousands}” can be ${thousands.replace('.', '')} or ${Number(thousands)}: this file is one of a spreadsheet that writes commas for points.`,
      `Write ${thousands.replace('.', '')}, or ${thousands}0.`,
    );
    return true;
  }

  #answer(cell: CsvCell, type: ValueType): Value {
    const { text } = cell;
    if (text === '') return null;
    switch (type.kind) {
      case 'number':
        return this.#number(cell);
      case 'yes-no':
        if (/^(yes|true)$/i.test(text)) return true;
        if (/^(no|false)$/i.test(text)) return false;
        this.#fault(cell, `“${text}” is neither yes nor no.`, 'Write yes or no.');
        return null;
      case 'date':
        if (daysOf(text) !== undefined) return text;
        this.#fault(
          cell,
          `“${text}” is no date as tables write them.`,
          'Write 2026-03-14, and format the cell as text.',
        );
        return null;
      default:
        return /^"(?:[^"\\]|\\.)*"$/s.test(text) ? unquoted(text) : text;
    }
  }

  #number(cell: CsvCell): number | null {
    const { text } = cell;
    // A spreadsheet that sets cells apart by semicolons does so because its comma is that of decimals.
    const european = this.#file.delimiter === ';' && /^-?\d+,\d+$/.test(text);
    if (european) return Number(text.replace(',', '.'));
    if (this.#isUnclear(cell)) return null;
    if (/^-?(\d+(\.\d+)?|\.\d+)$/.test(text)) return Number(text);
    this.#fault(cell, `“${text}” is no number.`, 'Write a number without its unit and with a point: 3.9.');
    return null;
  }

  /** What the tests of a column without brackets are of. */
  #testsType(rows: CsvFile['rows'], at: number): ValueType {
    const texts = rows.map((row) => row[at]?.text ?? '').filter((text) => text !== '' && text !== '-');
    const candidates: readonly ValueType[] = [{ kind: 'number' }, { kind: 'yes-no' }, { kind: 'date' }];
    const fits = (type: ValueType): boolean =>
      texts.every((text) => {
        const lower = type.kind === 'yes-no' ? text.toLowerCase() : text;
        return readTest(feelTest(lower, type), type).set !== undefined;
      });
    const found = candidates.find(fits);
    if (found) return found;
    const words = texts.flatMap((text) =>
      (/^not\s*\((.*)\)$/s.exec(text)?.[1] ?? text).split(',').map((one) => one.trim()),
    );
    if (words.every((one) => /^[\p{L}\p{N}][\p{L}\p{N} -]*$/u.test(one))) {
      return { kind: 'choice', values: [...new Set(words)] };
    }
    return { kind: 'text' };
  }

  #answersType(rows: CsvFile['rows'], at: number): ValueType {
    const texts = rows.map((row) => row[at]?.text ?? '').filter((text) => text !== '');
    const number = this.#file.delimiter === ';' ? /^-?\d+([.,]\d+)?$/ : /^-?\d+(\.\d+)?$/;
    if (texts.length > 0 && texts.every((text) => number.test(text))) return { kind: 'number' };
    if (texts.length > 0 && texts.every((text) => /^(yes|no|true|false)$/i.test(text)))
      return { kind: 'yes-no' };
    return { kind: 'text' };
  }
}

/** A name a test uses that is none of these. */
function unknownName(test: string, known: Iterable<string>): string | undefined {
  const context = Object.fromEntries([...known].map((id) => [id, null]));
  try {
    const { warnings } = unaryTest(test, { ...context, '?': null });
    const unknown = warnings.find(({ type }) => /^NO_(VARIABLE|FUNCTION)_FOUND$/.test(type));
    return unknown && test.slice(unknown.position?.from ?? 0, unknown.position?.to ?? test.length);
  } catch {
    // It cannot be read at all, which reading the table says better.
    return undefined;
  }
}

const nowhere: Span = { start: 0, end: 0 };

function labelOf(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
