/** Finds the row that names the columns, with a row of groups above it or of units below it, and reads it. */
import { cellText, columnLetters, columnNumber, type Sheet, type SheetRow } from './cell.ts';
import { type Column, columnsOf, headKey, isGroup, type SaidColumns } from './columns.ts';
import { bareNumber, headingOf } from './heading.ts';
import { hzUnitOf, thdUnitOf, voltsUnitOf } from './units.ts';

export interface Header {
  /** Place in the rows of the sheet. */
  readonly at: number;
  /** Rows that belong to it: one, or two with one of units below. */
  readonly length: number;
  /** Whether the row above names groups of columns, and so is none of conditions. */
  readonly hasGroups: boolean;
  readonly columns: readonly Column[];
}

const rowsLookedAt = 60;

/** The header; undefined where no row names columns. @param row the number the person says it has. */
export function findHeader(sheet: Sheet, said: SaidColumns, row?: number): Header | undefined {
  const known = new Map<number, number>();
  let best = -1;
  for (const [at, candidate] of sheet.rows.slice(0, rowsLookedAt).entries()) {
    if (row !== undefined ? candidate.row === row : isBetter(at, candidate, known, best, said)) best = at;
  }
  const found = sheet.rows[best];
  if (!found) return undefined;
  const units = unitsBelow(found, sheet.rows[best + 1]);
  const groups = groupsAbove(found, sheet.rows[best - 1]);
  const width = Math.max(found.cells.length, groups.length);
  const heads = Array.from({ length: width }, (_, at) =>
    [groups[at], cellText(found.cells[at]), units[at] ? `(${units[at]})` : '']
      .filter((part) => part !== undefined && part !== '')
      .join(' '),
  );
  const body = sheet.rows.slice(best + (units.length > 0 ? 2 : 1));
  return {
    at: best,
    length: units.length > 0 ? 2 : 1,
    hasGroups: groups.length > 0,
    columns: columnsOf(heads, body, said),
  };
}

function isBetter(
  at: number,
  { cells }: SheetRow,
  known: Map<number, number>,
  best: number,
  said: SaidColumns,
): boolean {
  // A label of conditions ends in a colon.
  const heads = cells.map(cellText).filter((text) => text !== '' && text.length < 80 && !/[:=]$/.test(text));
  const named = heads.filter((text) => bareNumber(text) === undefined && headingOf(text).role !== undefined);
  const byPerson = heads.filter((text) => said.has(headKey(text)));
  const kinds = new Set(named.map((text) => JSON.stringify(headingOf(text).role)));
  const score = kinds.size + byPerson.length * 2 + (kinds.size > 1 ? numbersIn(heads) / 100 : 0);
  known.set(at, score);
  // A row of readings has names in it too, but never as many as the one above.
  return score >= 2 && score > (known.get(best) ?? 0) && named.length + byPerson.length >= 2;
}

function numbersIn(heads: readonly string[]): number {
  return heads.filter((text) => bareNumber(text) !== undefined).length;
}

const isUnit = (text: string): boolean =>
  [voltsUnitOf, thdUnitOf, hzUnitOf].some((of) => of(text) !== undefined);

/** Units of a row that holds nothing else, by column; none where the row below is one of readings. */
function unitsBelow(header: SheetRow, below: SheetRow | undefined): string[] {
  const texts = (below?.cells ?? []).map((cell) => cellText(cell).replace(/^[([](.*)[)\]]$/, '$1'));
  const filled = texts.filter((text) => text !== '');
  const fit = filled.length > 0 && filled.every(isUnit) && texts.length <= header.cells.length + 1;
  return fit ? texts : [];
}

/** What stands above a header and holds for the columns to its right, up to the next: outputs, frequencies, steps. */
function groupsAbove(header: SheetRow, above: SheetRow | undefined): string[] {
  const texts = (above?.cells ?? []).map(cellText);
  const filled = texts.filter((text) => text !== '');
  const names = header.cells.map((cell) => headKey(cellText(cell))).filter((text) => text !== '');
  const isRepeated = new Set(names).size < names.length;
  const fixes = filled.length > 0 && filled.every((text) => isGroup(headingOf(text)));
  if (!isRepeated || !fixes) return [];
  let group = '';
  return Array.from({ length: Math.max(texts.length, header.cells.length) }, (_, at) => {
    group = texts[at] || group;
    const role = headingOf(cellText(header.cells[at])).role;
    return role === undefined || role.is === 'volts' || role.is === 'thd' ? group : '';
  });
}

/** What `--columns` names that the sheet does not have. */
export function unknownSaid(said: SaidColumns, { columns }: Header): string[] {
  const known = new Set(columns.flatMap(({ at, head }) => [headKey(head), columnLetters(at).toLowerCase()]));
  return [...said.keys()].filter((key) => !known.has(key) && columnNumber(key) < 0);
}
