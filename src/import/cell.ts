/** A sheet as it was read, whatever program wrote it: rows of cells, each found again by its name (B7). */

/** Text as it stands, trimmed, empty for nothing; or a number the file holds as one. */
export type Cell = string | number;

export interface SheetRow {
  /** The number the spreadsheet shows beside it. */
  readonly row: number;
  /** The line of the file it begins at; that of a workbook is its row. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

export interface Sheet {
  /** Rows that are not empty. */
  readonly rows: readonly SheetRow[];
  /** What was found out about the file itself, in sentences. */
  readonly notes: readonly string[];
}

/** What is wrong with a file or with what it holds, and what to do. */
export class UnusableSheet extends Error {
  readonly help: string;

  constructor(message: string, help: string) {
    super(message);
    this.help = help;
  }
}

/** The letters of a column, 0 for A: 27 gives AB. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + (column % 26));
}

/** The number of a column, 0 for A; −1 where the letters are none of a spreadsheet. */
export function columnNumber(letters: string): number {
  if (!/^[A-Za-z]{1,3}$/.test(letters)) return -1;
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}

/** `B7` */
export function cellName(column: number, row: number): string {
  return `${columnLetters(column)}${row}`;
}

/** A cell as text, for headers and messages. */
export function cellText(cell: Cell | undefined): string {
  return cell === undefined ? '' : String(cell);
}

/** The text of a cell, short enough for a message. */
export function quoted(cell: Cell | undefined): string {
  const text = cellText(cell).replace(/\s+/g, ' ');
  return `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;
}
