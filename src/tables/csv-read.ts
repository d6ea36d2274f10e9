/** A CSV file → a decision table, or what is wrong with it. */
import { type CsvCell, type CsvFile, csvCells } from './csv-cells.ts';
import { type Head, headHelp, otherwiseRow, readHead, readPolicy } from './csv-head.ts';
import { CsvValues, nowhere } from './csv-values.ts';
import { type FileFault, type Span, UnusableFile } from './file-fault.ts';
import { readTable } from './read-table.ts';
import type { Table, TableFault, WrittenRule, WrittenTable } from './table.ts';

export interface TableOfCsv {
  /** Undefined where there are faults. */
  readonly table: Table | undefined;
  readonly written: WrittenTable | undefined;
  /** What rules say, by rule id. */
  readonly says: Readonly<Record<string, string>>;
  readonly faults: readonly FileFault[];
  readonly spanOf: (fault: Pick<TableFault, 'rule' | 'column' | 'in'>) => Span;
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
  readonly #head: readonly CsvCell[];
  readonly #rows: readonly (readonly CsvCell[])[];
  readonly #name: string;
  readonly #values: CsvValues;

  constructor(file: CsvFile, head: readonly CsvCell[], rows: CsvFile['rows'], name: string) {
    this.#values = new CsvValues(file.delimiter);
    this.#head = head;
    this.#rows = rows;
    this.#name = name;
  }

  read(): TableOfCsv {
    const { columns, ruleAt, sayAt, policy } = this.#readHead();
    const headIsRead = this.#values.faults.length === 0;
    const whens = columns.filter(({ head }) => head.kind === 'when');
    const gives = columns.filter(({ head }) => head.kind === 'give');
    const body = this.#rows.filter((row) => !this.#isOtherwise(row, ruleAt));
    const last = this.#rows.filter((row) => this.#isOtherwise(row, ruleAt));
    if (last[1]) this.#values.fault(last[1][ruleAt ?? 0], 'There are two rows of defaults.', 'Keep one.');
    if (body.length === 0)
      this.#values.fault(this.#head[0], 'There is no rule.', 'Write a row for each rule.');
    this.#longRows();
    const inputs = whens.map(({ head, at }) => {
      const type = head.type ?? this.#values.testsType(body, at);
      return { id: head.id, label: labelOf(head.id), type, mayBeMissing: head.mayBeMissing };
    });
    const outputs = gives.map(({ head, at }) => {
      const type = head.type ?? this.#values.answersType(this.#rows, at);
      const priorities = type.kind === 'choice' ? type.values : [];
      const given = last[0]?.[at];
      const otherwise = given && given.text !== '' ? this.#values.answer(given, type) : undefined;
      return { id: head.id, label: labelOf(head.id), type, priorities, otherwise };
    });
    const names = new Map(inputs.map(({ id }) => [id.replaceAll('-', ' '), id] as const));
    const says: Record<string, string> = {};
    const seen = new Set<string>();
    const rules = body.map((row, index): WrittenRule => {
      const cell = ruleAt === undefined ? undefined : row[ruleAt];
      const id = cell && cell.text !== '' ? cell.text : `rule-${index + 1}`;
      if (seen.has(id)) this.#values.fault(cell ?? row[0], `Two rules are called “${id}”.`, 'Rename one.');
      seen.add(id);
      const said = sayAt === undefined ? undefined : row[sayAt]?.text;
      if (said) says[id] = said;
      return {
        id,
        tests: whens.map(({ at }, column) => this.#values.test(row[at], inputs[column]?.type, names)),
        results: gives.map(({ at }, column) => {
          const given = row[at];
          const type = outputs[column]?.type;
          return given && type ? this.#values.answer(given, type) : null;
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
    const all = [...this.#values.faults, ...placed].sort((a, b) => a.span.start - b.span.start);
    const whole = all.length === 0 ? { table, written } : { table: undefined, written: undefined };
    return { ...whole, says, faults: all, spanOf };
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
          this.#values.fault(cell, `“${text}” names no hit policy.`, help);
        }
      } else if (/^say$/i.test(text) && sayAt === undefined) sayAt = at;
      else if (text === '') {
        const used = this.#rows.find((row) => (row[at]?.text ?? '') !== '');
        if (used) this.#values.fault(used[at], 'This cell stands in a column without a head.', headHelp);
      } else {
        const head = readHead(text);
        if (head.kind === 'fault') this.#values.fault(cell, head.message, head.help);
        else if (columns.some((one) => one.head.kind === head.kind && one.head.id === head.id)) {
          this.#values.fault(cell, `There are two columns “${text}”.`, 'Rename one, or join them.');
        } else columns.push({ head, at, span });
      }
    }
    if (this.#values.faults.length === 0) {
      for (const kind of ['when', 'give'] as const) {
        if (columns.some(({ head }) => head.kind === kind)) continue;
        this.#values.fault(this.#head[0], `No column begins with “${kind}:”.`, headHelp);
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
      this.#values.fault(beyond, message, 'Put cells that hold a comma or semicolon in quotation marks.');
    }
  }
}

function labelOf(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
