/** Finds the row that names the columns, with a row of groups above it or of units below it, and reads it. */
import {
  type Cell,
  cellText,
  columnLetters,
  columnNumber,
  quoted,
  type Sheet,
  type SheetRow,
} from './cell.ts';
import { bareNumber, type Heading, headingOf } from './heading.ts';
import type { Fixed, Role } from './role.ts';
import { hzUnitOf, thdUnitOf, voltsUnitOf } from './units.ts';

export interface Column {
  readonly at: number;
  /** As the sheet has it, a group above it and a unit below it included. */
  readonly head: string;
  readonly role: Role;
  /** `said`: by `--columns`; `known`: by name and unit; `guessed`: has to be confirmed. */
  readonly certainty: 'said' | 'known' | 'guessed';
  readonly why: string;
}

export interface Header {
  /** Place in the rows of the sheet. */
  readonly at: number;
  /** Rows that belong to it: one, or two with one of units below. */
  readonly length: number;
  /** Whether the row above names groups of columns, and so is none of conditions. */
  readonly hasGroups: boolean;
  readonly columns: readonly Column[];
}

/** What a person says of the columns: by head or by letter. */
export type SaidColumns = ReadonlyMap<string, Role>;

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
  const heads = cells.map(cellText).filter((text) => text !== '' && text.length < 80);
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

/** `--columns` names a head without regard to capitals and blanks. */
export function headKey(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
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

function isGroup({ role }: Heading): boolean {
  return role?.is === 'volts' && Object.keys(role.fixed).length > 0 && role.unit === undefined;
}

function columnsOf(heads: readonly string[], body: readonly SheetRow[], said: SaidColumns): Column[] {
  const first = heads.map((head, at): Column | undefined => {
    const bySaying = said.get(headKey(head)) ?? said.get(columnLetters(at).toLowerCase());
    if (bySaying) return { at, head, role: bySaying, certainty: 'said', why: 'as you say' };
    const isEmpty = !body.slice(0, 500).some(({ cells }) => cellText(cells[at]) !== '');
    if (head === '' && isEmpty) return undefined;
    if (bareNumber(head) !== undefined)
      return { at, head, role: { is: 'note' }, certainty: 'guessed', why: '' };
    const heading = headingOf(head);
    if (heading.role) {
      return {
        at,
        head,
        role: heading.role,
        certainty: heading.isSaid ? 'known' : 'guessed',
        why: heading.why,
      };
    }
    return { at, head, role: { is: 'note' }, certainty: 'guessed', why: heading.why };
  });
  const has = (is: Role['is']): boolean => first.some((column) => column?.role.is === is);
  const columns = first.map((column) => column && withBareNumber(column, has));
  const byContents = columns.flatMap((column) => {
    if (!column) return [];
    return [column.certainty === 'guessed' ? refined(column, body, columns) : column];
  });
  return withoutDoubles(byContents);
}

/** A head that is only a number is a frequency or a step: the one of the two that has no column. */
function withBareNumber(column: Column, has: (is: Role['is']) => boolean): Column {
  const number = bareNumber(column.head);
  if (number === undefined || column.certainty === 'said') return column;
  const fixed: Fixed | undefined =
    has('step') && !has('hz') && number >= 10
      ? { hz: number }
      : has('hz') && !has('step') && Number.isInteger(number) && number <= 200
        ? { step: number }
        : undefined;
  if (!fixed) return { ...column, why: 'its head is a number, and what of is not said' };
  const why = `its head is a number, and no other column is for the ${fixed.hz === undefined ? 'step' : 'frequency'}`;
  return { ...column, role: { is: 'volts', unit: undefined, fixed }, why };
}

/** Volts without a unit, and columns of unknown name, by what stands in them. */
function refined(column: Column, body: readonly SheetRow[], all: readonly (Column | undefined)[]): Column {
  const cells = body
    .slice(0, 500)
    .map((row) => row.cells[column.at])
    .filter((cell): cell is Cell => cell !== undefined && cell !== '');
  if (column.role.is === 'volts' && column.role.unit === undefined) {
    return withUnit(column, column.role, cells);
  }
  if (column.role.is === 'thd' && column.role.unit === undefined) {
    const own = cells.some((cell) => /[%\p{L}]/u.test(cellText(cell)));
    return own
      ? {
          ...column,
          certainty: column.why === 'by its name' ? 'known' : 'guessed',
          why: `${column.why}; units stand in its cells`,
        }
      : {
          ...column,
          role: { ...column.role, unit: '%' },
          why: `${column.why}; no unit is said: taken as per cent`,
        };
  }
  if (column.role.is !== 'note' || cells.length === 0 || !/not known/.test(column.why)) return column;
  return byContents(column, cells, all);
}

function withUnit(column: Column, role: Role & { readonly is: 'volts' }, cells: readonly Cell[]): Column {
  const texts = cells.map(cellText);
  if (texts.length > 0 && texts.every((text) => /[\p{L}%]/u.test(text))) {
    const isNamed = column.why.startsWith('by its');
    return {
      ...column,
      certainty: isNamed ? 'known' : 'guessed',
      why: `${column.why}; units stand in its cells`,
    };
  }
  if (texts.some((text) => /^[-\u2212]\s*[\d.,]/.test(text))) {
    return {
      ...column,
      role: { is: 'note' },
      why: 'no unit is said, and volts are not below zero: dBV or dBu?',
    };
  }
  const sizes = texts.map((text) => Number(text.replace(',', '.'))).filter((size) => size > 0);
  const median = sizes.sort((a, b) => a - b)[Math.floor(sizes.length / 2)] ?? 0;
  const unit = median > 60 ? 'mV' : 'V';
  return {
    ...column,
    role: { ...role, unit },
    why: `${column.why}; no unit is said: by their size, ${unit}`,
  };
}

/** A column of unknown name that can only be one thing by what stands in it, and that no other column is. */
function byContents(column: Column, cells: readonly Cell[], all: readonly (Column | undefined)[]): Column {
  const has = (is: Role['is']): boolean => all.some((one) => one?.role.is === is);
  const texts = cells.map(cellText);
  const share = (fits: (text: string) => boolean): boolean => texts.filter(fits).length >= 0.9 * texts.length;
  const guess = (role: Role, what: string): Column => ({
    ...column,
    role,
    why: `by what stands in it: ${what}`,
  });
  if (!has('channel') && share((text) => isGroup(headingOf(text)) && /^\D+$/.test(text))) {
    return guess({ is: 'channel' }, 'outputs');
  }
  if (!has('step') && has('hz') && share((text) => /^\d{1,2}$/.test(text)) && new Set(texts).size > 1) {
    return guess({ is: 'step' }, 'small whole numbers');
  }
  if (!has('hz') && share((text) => /^\d[\d.,]*\s*k?hz$/i.test(text)))
    return guess({ is: 'hz', unit: 'Hz' }, 'frequencies');
  return column;
}

/** Of two columns of the same, the later is left out; volts are told apart by number of repeat only where said. */
function withoutDoubles(columns: readonly Column[]): Column[] {
  const seen = new Map<string, Column>();
  return columns.map((column) => {
    const { role } = column;
    if (role.is === 'note') return column;
    const key =
      role.is === 'volts' || role.is === 'thd' ? `${role.is} ${JSON.stringify(role.fixed)}` : role.is;
    const before = seen.get(key);
    if (!before) {
      seen.set(key, column);
      return column;
    }
    if (column.certainty === 'said') return column;
    const letters = columnLetters(before.at);
    return {
      ...column,
      role: { is: 'note' },
      certainty: 'guessed',
      why: `${quoted(column.head)} would be the same as column ${letters}, ${quoted(before.head)}`,
    };
  });
}

/** What `--columns` names that the sheet does not have. */
export function unknownSaid(said: SaidColumns, { columns }: Header): string[] {
  const known = new Set(columns.flatMap(({ at, head }) => [headKey(head), columnLetters(at).toLowerCase()]));
  return [...said.keys()].filter((key) => !known.has(key) && columnNumber(key) < 0);
}
