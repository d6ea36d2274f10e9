/** The cells of a CSV file with their places, whatever program wrote it; and cells guarded against being run. */
import { CsvError, parse } from 'csv-parse/sync';
import { type Span, UnusableFile } from './file-fault.ts';

export interface CsvCell {
  /** Trimmed, and without a guard. */
  readonly text: string;
  readonly span: Span;
}

export interface CsvFile {
  readonly delimiter: ',' | ';' | '\t';
  /** Rows that are not empty. */
  readonly rows: readonly (readonly CsvCell[])[];
}

const delimiters = [',', ';', '\t'] as const;
const mostCharacters = 8 * 1024 ** 2;

/**
 * The rows of a file whose cells are set apart by commas, semicolons or tabs: by what its first line has most of.
 * @throws UnusableFile where its quotation marks do not fit, or it is too large.
 */
export function csvCells(text: string): CsvFile {
  if (text.length > mostCharacters) {
    throw new UnusableFile(
      { start: 0, end: 0 },
      `The file is larger than ${mostCharacters / 1024 ** 2} MB.`,
      'Split the table, or delete columns that are no part of it.',
    );
  }
  const delimiter = delimiterOf(text);
  const spans = [...rowSpans(text, delimiter)];
  let records: string[][];
  try {
    records = parse(text, {
      delimiter,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      skip_empty_lines: false,
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw misplacedQuote(text, error, spans);
  }
  const rows = records.map((record, row) =>
    record.map((cell, column): CsvCell => {
      const span = spans[row]?.[column] ?? spans[row]?.at(-1) ?? { start: text.length, end: text.length };
      return { text: unguarded(cell.trim()), span };
    }),
  );
  return { delimiter, rows: rows.filter((row) => row.some((cell) => cell.text !== '')) };
}

function delimiterOf(text: string): CsvFile['delimiter'] {
  const firstLine = /^[\r\n]*([^\r\n]*)/.exec(text)?.[1]?.replace(/"(?:[^"]|"")*"?|\([^)]*\)/g, '') ?? '';
  const count = (one: string): number => firstLine.split(one).length;
  return delimiters.reduce((best, one) => (count(one) > count(best) ? one : best));
}

/** Where cells begin and end, quotation marks counted in. */
function* rowSpans(text: string, delimiter: string): Generator<Span[]> {
  let row: Span[] = [];
  let start = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const one = text[at];
    if (quoted) {
      if (one === '"') {
        if (text[at + 1] === '"') at += 1;
        else quoted = false;
      }
    } else if (one === '"' && at === start) {
      quoted = true;
    } else if (one === delimiter) {
      row.push({ start, end: at });
      start = at + 1;
    } else if (one === '\n' || one === '\r') {
      row.push({ start, end: at });
      yield row;
      if (one === '\r' && text[at + 1] === '\n') at += 1;
      row = [];
      start = at + 1;
    }
  }
  if (start < text.length || row.length > 0) yield [...row, { start, end: text.length }];
}

function misplacedQuote(text: string, error: CsvError, spans: readonly (readonly Span[])[]): UnusableFile {
  const line = Number(error.lines ?? 1);
  const lineStart = [...text.matchAll(/^/gm)][line - 1]?.index ?? 0;
  const cell = spans
    .flat()
    .find(({ start, end }) => start >= lineStart && text.slice(start, end).includes('"'));
  const message =
    error.code === 'CSV_QUOTE_NOT_CLOSED'
      ? 'A quotation mark is opened and not closed.'
      : 'A quotation mark stands where none can be.';
  return new UnusableFile(
    cell ?? { start: lineStart, end: lineStart },
    message,
    'A cell with quotation marks in it begins and ends with one, and those within are doubled: """fixed""". Spreadsheets do so by themselves.',
  );
}

/**
 * Spreadsheets run a cell that begins with one of these as a formula (OWASP, “CSV Injection”); an apostrophe before
 * it keeps it a text. Apostrophes that were there before get one more, so that it can be undone.
 */
const runs = /^'*[=+\-@\t\r\n\uFF0B\uFF0D\uFF1D\uFF20]/;
/** These begin alike and do no harm: “-” for any value, numbers below zero. */
const harmless = /^-(\d+(\.\d+)?)?$/;

/** The text as a cell that no spreadsheet runs, in quotation marks where it needs them. */
export function csvCell(text: string): string {
  const safe = runs.test(text) && !harmless.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The text of a cell without the apostrophe {@link csvCell} put before it. */
export function unguarded(text: string): string {
  return text.startsWith("'") && runs.test(text) ? text.slice(1) : text;
}
