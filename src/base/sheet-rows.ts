/** The rows of a CSV sheet, each with its cells and its line. */
import { CsvError, parse } from 'csv-parse/sync';

/** A quotation mark is out of place: nothing from there on can be trusted. */
export class MisplacedQuote extends Error {}

/**
 * Calls `see` for every row that is not empty, its cells trimmed, with its line. Line ends are LF and CRLF.
 * @throws MisplacedQuote where a quoted cell does not end on its line, or is no whole cell.
 */
export function eachRow(text: string, see: (cells: string[], line: number) => void): void {
  if (beyondPlain.test(text)) eachRowByLibrary(text, see);
  else eachPlainRow(text, see);
}

/** Anything but printable ASCII without quotation marks and ordinary line ends: hardly a sheet has it. */
const beyondPlain = /[^\t\n\r !#-~]|\r(?!\n)/;

/** As {@link eachRow}, by the CSV library, which knows about quotes and about the blanks of all scripts. */
export function eachRowByLibrary(text: string, see: (cells: string[], line: number) => void): void {
  try {
    parse(text, {
      record_delimiter: ['\n', '\r\n'],
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      on_record: (record: string[], { lines }) => {
        if (record.some((cell) => cell.includes('\n'))) throw new MisplacedQuote();
        see(record, lines);
        return null;
      },
    });
  } catch (error) {
    throw error instanceof CsvError ? new MisplacedQuote() : error;
  }
}

/** Without quotation marks a row is what stands between line ends and commas; tests hold it to what the library gives. */
function eachPlainRow(text: string, see: (cells: string[], line: number) => void): void {
  let line = 0;
  for (let start = 0; start < text.length; ) {
    const lineEnd = text.indexOf('\n', start);
    const next = lineEnd === -1 ? text.length : lineEnd;
    const end = lineEnd > start && text.charCodeAt(next - 1) === carriageReturn ? next - 1 : next;
    line += 1;
    const cells: string[] = [];
    for (let from = start; ; ) {
      const comma = text.indexOf(',', from);
      if (comma === -1 || comma >= end) {
        cells.push(trimmed(text.slice(from, end)));
        break;
      }
      cells.push(trimmed(text.slice(from, comma)));
      from = comma + 1;
    }
    if (cells.length > 1 || cells[0] !== '') see(cells, line);
    start = next + 1;
  }
}

const carriageReturn = 13;

function trimmed(cell: string): string {
  // Most cells begin and end in a letter or a figure.
  return cell.charCodeAt(0) > space && cell.charCodeAt(cell.length - 1) > space ? cell : cell.trim();
}

const space = 32;
