/** Rows as CSV after RFC 4180: lines end in CR LF, and cells that need it stand in quotes. */

export type Cell = string | number | boolean | null | undefined;

/** The text of a file: the names of the columns, then the rows; what is missing is an empty cell. */
export function csvText(columns: readonly string[], rows: Iterable<readonly Cell[]>): string {
  const lines = [columns.join(',')];
  for (const row of rows) lines.push(row.map(cellText).join(','));
  return `${lines.join('\r\n')}\r\n`;
}

function cellText(cell: Cell): string {
  if (typeof cell !== 'string') return cell === null || cell === undefined ? '' : String(cell);
  return /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
