/** The lines of the demo’s decision tables: rules as blocks, tests as cells. */
import type { TableEntry } from '../../schemas/index.ts';
import type { Table } from '../../src/tables/index.ts';
import type { Demo, Edit } from './demo.ts';
import type { Mistake } from './kind.ts';

/** One rule as it stands in its file. */
export interface RuleLines {
  readonly id: string;
  /** 1-based, the line of its id and the last one. */
  readonly from: number;
  readonly to: number;
}

export interface DemoTable {
  readonly file: string;
  readonly data: TableEntry;
  readonly table: Table;
  readonly rules: readonly RuleLines[];
  /** The line that says `rules:`. */
  readonly rulesLine: number;
}

/** One test of a rule, on its line. */
export interface CellLine {
  readonly of: DemoTable;
  readonly rule: RuleLines;
  readonly line: number;
  /** The column’s id. */
  readonly column: string;
  /** What is tested, without quotes. */
  readonly test: string;
  /** As it stands, quotes included, and where on the line it begins. */
  readonly written: string;
  readonly at: number;
}

/** Every decision table of the demo that can be read. */
export function tablesOf(demo: Demo): DemoTable[] {
  return [...demo.answers.base.tables.values()].flatMap(({ id, file, data }): DemoTable[] => {
    const table = demo.answers.tables.get(id)?.table;
    if (!table) return [];
    const lines = demo.lines(file);
    const rulesLine = demo.lineOf(file, /^rules:$/);
    const end = lines.findIndex((text, index) => index >= rulesLine && /^\S/.test(text));
    const starts = lines.flatMap((text, index) => {
      const match = index >= rulesLine ? /^ {2}- id: (\S+)$/.exec(text) : null;
      return match ? [{ id: match[1] ?? '', from: index + 1 }] : [];
    });
    const last = end < 0 ? lines.filter((text) => text !== '').length : end;
    const rules = starts.map((start, index) => ({ ...start, to: (starts[index + 1]?.from ?? last + 1) - 1 }));
    return [{ file, data, table, rules, rulesLine }];
  });
}

/** The tests of all tables, those in braces and those with a line each. */
export function cellsOf(demo: Demo): CellLine[] {
  return tablesOf(demo).flatMap((of) =>
    of.rules.flatMap((rule) => {
      const found: CellLine[] = [];
      let inBlock = false;
      for (let line = rule.from; line <= rule.to; line += 1) {
        const text = demo.lines(of.file)[line - 1] ?? '';
        if (/^ {4}\S/.test(text)) inBlock = /^ {4}when:\s*$/.test(text);
        const isBraces = /^ {4}when: \{/.test(text);
        if (!isBraces && !(inBlock && /^ {6}/.test(text))) continue;
        const from = isBraces ? text.indexOf('{') : 0;
        for (const match of text.slice(from).matchAll(/([a-z0-9-]+): ("[^"]*"|[^,}"]*[^,}" ])/g)) {
          const [, column = '', written = ''] = match;
          const at = from + match.index + column.length + 2;
          found.push({ of, rule, line, column, test: written.replaceAll('"', ''), written, at });
        }
      }
      return found;
    }),
  );
}

/** The tests of columns of a kind of value. */
export function cellsHolding(demo: Demo, kind: 'number' | 'choice' | 'yes-no'): CellLine[] {
  return cellsOf(demo).filter(
    ({ of, column }) => of.table.inputs.find(({ id }) => id === column)?.type.kind === kind,
  );
}

/** Line `cell.line` with something else for the test, quotes included. */
export function withTest(demo: Demo, { of, line, at, written }: CellLine, test: string): string {
  const text = demo.lines(of.file)[line - 1] ?? '';
  return text.slice(0, at) + test + text.slice(at + written.length);
}

/** Line `cell.line` without the test; the commas of braces stay right. */
export function withoutTest(demo: Demo, { of, line, at, column, written }: CellLine): string | undefined {
  const text = demo.lines(of.file)[line - 1] ?? '';
  const from = at - column.length - 2;
  if (!/^ {4}when: \{/.test(text)) return undefined;
  const before = text.slice(0, from);
  const after = text.slice(at + written.length);
  if (after.startsWith(', ')) return before + after.slice(2);
  return before.endsWith(', ') ? before.slice(0, -2) + after : `${before.trimEnd()}${after.trimStart()}`;
}

/** The text of a rule. */
export function ruleText(demo: Demo, { file }: DemoTable, { from, to }: RuleLines): string {
  return demo
    .lines(file)
    .slice(from - 1, to)
    .join('\n');
}

/** A mistake in a table after which the first finding is at one of some lines; all its rules where none are given. */
export function inTable(of: DemoTable, what: string, edit: Edit, lines?: readonly number[]): Mistake {
  return {
    what: `${of.file}: ${what}`,
    edits: [edit],
    places: [{ file: of.file, lines: lines ?? [of.rulesLine, ...of.rules.map(({ from }) => from)] }],
  };
}
