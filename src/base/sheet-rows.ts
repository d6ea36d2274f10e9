/** The rows of a CSV sheet, each with its cells and its line. */
import { CsvError, parse } from 'csv-parse/sync';

/** A quotation mark is out of place: nothing from there on can be trusted. */
export class MisplacedQuote extends Error {}

/** How a sheet is set, where it is not one of readings. */
export interface SheetSetting {
  readonly delimiter: string;
  /** Cells may go over several lines, and hold quotation marks that mean nothing: what other programs write. */
  readonly isForeign: boolean;
}

const ownSetting: SheetSetting = { delimiter: ',', isForeign: false };

/**
 * Calls `see` for every row that is not empty, its cells trimmed, with the line it begins at. Line ends are LF and
 * CRLF.
 * @throws MisplacedQuote where a quoted cell does not end (or, in a sheet of our own, not on its line), or is no
 *   whole cell.
 */
export function eachRow(
  text: string,
  see: (cells: string[], line: number) => void,
  setting: SheetSetting = ownSetting,
): void {
  if (beyondPlain.test(text)) eachRowByLibrary(text, see, setting);
  else eachPlainRow(text, see, setting.delimiter);
}

/** Anything but printable ASCII without quotation marks and ordinary line ends: hardly a sheet has it. */
const beyondPlain = /[^\t\n\r !#-~]|\r(?!\n)/;

/** As {@link eachRow}, by the CSV library, which knows about quotes and about the blanks of all scripts. */
export function eachRowByLibrary(
  text: string,
  see: (cells: string[], line: number) => void,
  { delimiter, isForeign }: SheetSetting = ownSetting,
): void {
  try {
    parse(text, {
      delimiter,
      record_delimiter: ['\n', '\r\n'],
      relax_column_count: true,
      relax_quotes: isForeign,
      skip_empty_lines: true,
      // Between tabs the library would take empty cells for blanks.
      trim: !isForeign,
      on_record: (record: string[], { lines }) => {
        const breaks = record.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
        if (breaks > 0 && !isForeign) throw new MisplacedQuote();
        const cells = isForeign ? record.map((cell) => cell.trim()) : record;
        if (cells.length > 1 || cells[0] !== '') see(cells, lines - breaks);
        return null;
      },
    });
  } catch (error) {
    throw error instanceof CsvError ? new MisplacedQuote() : error;
  }
}

/** Without quotation marks a row is what stands between line ends and delimiters; tests hold it to what the library gives. */
function eachPlainRow(text: string, see: (cells: string[], line: number) => void, delimiter: string): void {
  let line = 0;
  for (let start = 0; start < text.length; ) {
    const lineEnd = text.indexOf('\n', start);
    const next = lineEnd === -1 ? text.length : lineEnd;
    const end = lineEnd > start && text.charCodeAt(next - 1) === carriageReturn ? next - 1 : next;
    line += 1;
    const cells: string[] = [];
    for (let from = start; ; ) {
      const comma = text.indexOf(delimiter, from);
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
