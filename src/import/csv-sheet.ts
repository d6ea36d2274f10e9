/** A CSV text → a sheet, whether commas, semicolons or tabs set its cells apart. */
import { eachRow, MisplacedQuote } from '../base/index.ts';
import { unguarded } from '../tables/csv-cells.ts';
import { type Sheet, type SheetRow, UnusableSheet } from './cell.ts';

const delimiters = [',', ';', '\t'] as const;
const delimiterNames = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;

/** Wider sheets are no readings: the widest have a column for each volume step or third octave. */
const mostColumns = 500;

/**
 * @param text with LF line ends.
 * @throws UnusableSheet where a quotation mark is opened and not closed, or there are too many columns.
 */
export function csvSheet(text: string): Sheet {
  const said = /^sep=([,;\t])\n/.exec(text)?.[1];
  const delimiter = (delimiters.find((one) => one === said) ?? delimiterOf(text)) as ',' | ';' | '\t';
  const rows: SheetRow[] = [];
  const known = new Map<string, string>();
  let breaks = 0;
  try {
    eachRow(
      text,
      (cells, line) => {
        if (line === 1 && said !== undefined) return;
        if (cells.length > mostColumns) throw tooWide(cells.length, line);
        if (cells.some((cell) => cell !== ''))
          rows.push({ row: line - breaks, line, cells: shared(cells, known) });
        for (const cell of cells) if (cell.includes('\n')) breaks += cell.split('\n').length - 1;
      },
      { delimiter, isForeign: true },
    );
  } catch (error) {
    if (!(error instanceof MisplacedQuote)) throw error;
    throw new UnusableSheet(
      `A quotation mark is opened and not closed, after line ${rows.at(-1)?.line ?? 1}.`,
      'Delete it, or save the sheet again from the spreadsheet.',
    );
  }
  return { rows, notes: [`Cells are set apart by ${delimiterNames[delimiter]}.`] };
}

function tooWide(columns: number, line: number): UnusableSheet {
  return new UnusableSheet(
    `Line ${line} has ${columns} cells; the most is ${mostColumns}.`,
    'Save only the part with the readings.',
  );
}

/** Steps, codes and frequencies come again and again: each text is kept once. */
function shared(cells: readonly string[], known: Map<string, string>): string[] {
  return cells.map((cell) => {
    const kept = known.get(cell);
    if (kept !== undefined) return kept;
    if (known.size < 5000 && cell.length < 40) known.set(cell, cell);
    return unguarded(cell.includes('\n') ? cell.replace(/\s+/g, ' ') : cell);
  });
}

/** The delimiter with which most of the first lines have as many cells as each other. */
function delimiterOf(text: string): (typeof delimiters)[number] {
  const lines = firstLines(text, 200).map((line) => line.replace(/"(?:[^"]|"")*"?/g, 'q'));
  const score = (delimiter: string): number => {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const cells = line.split(delimiter).length;
      if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
    }
    // Of two that split alike, decimal commas make more cells in fewer lines.
    return Math.max(0, ...counts.values());
  };
  return [';', '\t', ','].reduce((best, one) => (score(one) > score(best) ? one : best)) as ',' | ';' | '\t';
}

function firstLines(text: string, most: number): string[] {
  const lines: string[] = [];
  for (let start = 0; start < text.length && lines.length < most; ) {
    const end = text.indexOf('\n', start);
    const line = text.slice(start, Math.min(end === -1 ? text.length : end, start + 20_000));
    if (line.trim() !== '') lines.push(line);
    start = end === -1 ? text.length : end + 1;
  }
  return lines;
}
