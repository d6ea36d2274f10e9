/** The columns below a header: what each holds, by its head and, where that does not do, by what stands in it. */
import { nominalOf } from '../measure/index.ts';
import { type Cell, cellText, columnLetters, quoted, type SheetRow } from './cell.ts';
import { channelOf } from './channels.ts';
import { bareNumber, type Heading, headingOf } from './heading.ts';
import { figureOf } from './numbers.ts';
import type { Role } from './role.ts';
import { voltsUnitOf } from './units.ts';

export interface Column {
  readonly at: number;
  /** As the sheet has it, a group above it and a unit below it included. */
  readonly head: string;
  readonly role: Role;
  /** `said`: by `--columns`; `known`: by name and unit; `guessed`: has to be confirmed. */
  readonly certainty: 'said' | 'known' | 'guessed';
  readonly why: string;
}

/** What a person says of the columns: by head or by letter. */
export type SaidColumns = ReadonlyMap<string, Role>;

/** `--columns` names a head without regard to capitals and blanks. */
export function headKey(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
}

/** A head that says only which output, frequency, step or repeat its columns are for. */
export function isGroup({ role }: Heading): boolean {
  return role?.is === 'volts' && Object.keys(role.fixed).length > 0 && role.unit === undefined;
}

/** @param heads of all columns, in order; body: the rows below. */
export function columnsOf(heads: readonly string[], body: readonly SheetRow[], said: SaidColumns): Column[] {
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
  const numbers = first.flatMap((column) => (column ? (bareNumber(column.head) ?? []) : []));
  const kind = numbersAre(first, numbers);
  const columns = first.map((column) => column && withBareNumber(column, kind));
  const byContents = columns.flatMap((column) => {
    if (!column) return [];
    return [column.certainty === 'guessed' ? refined(column, body, columns) : column];
  });
  return withoutDoubles(byContents);
}

/** What heads that are only numbers are of: frequencies or steps, whichever no column of its own is for. */
function numbersAre(
  columns: readonly (Column | undefined)[],
  numbers: readonly number[],
): 'hz' | 'step' | undefined {
  const has = (is: 'hz' | 'step'): boolean => columns.some((column) => column?.role.is === is);
  const inHeads = (key: 'hz' | 'step'): boolean =>
    columns.some((column) => column?.role.is === 'volts' && key in column.role.fixed);
  if (inHeads('hz') && !inHeads('step')) return 'hz';
  if (inHeads('step') && !inHeads('hz')) return 'step';
  if (has('hz') !== has('step')) return has('hz') ? 'step' : 'hz';
  const areCentres = numbers.length > 2 && numbers.every((number) => nominalOf(number) !== undefined);
  return areCentres && Math.max(...numbers) > 200 ? 'hz' : undefined;
}

function withBareNumber(column: Column, kind: 'hz' | 'step' | undefined): Column {
  const number = bareNumber(column.head);
  if (number === undefined || column.certainty === 'said') return column;
  const fits = kind === 'hz' ? number >= 10 : kind === 'step' && Number.isInteger(number) && number <= 200;
  if (!fits || kind === undefined) return { ...column, why: 'its head is a number, and what of is not said' };
  const why = `its head is a number: ${kind === 'hz' ? 'hertz, as no other column is for the frequency' : 'the step, as no other column is for it'}`;
  return { ...column, role: { is: 'volts', unit: undefined, fixed: { [kind]: number } }, why };
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
  // “Output” may be which one, or what it puts out.
  const areOutputs = texts.length > 0 && texts.filter((text) => channelOf(text)).length >= 0.9 * texts.length;
  if (areOutputs && Object.keys(role.fixed).length === 0) {
    const why = `${column.why}, and outputs stand in it`;
    return {
      ...column,
      role: { is: 'channel' },
      certainty: column.why.startsWith('by its') ? 'known' : 'guessed',
      why,
    };
  }
  const withUnits = texts.filter((text) => voltsUnitOf(figureOf(text)?.unit ?? '') !== undefined).length;
  if (withUnits > 0 && withUnits >= 0.5 * texts.filter((text) => figureOf(text)).length) {
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
  const hasHz = has('hz') || all.some((one) => one?.role.is === 'volts' && one.role.fixed.hz !== undefined);
  if (!has('step') && hasHz && share((text) => /^\d{1,2}$/.test(text)) && new Set(texts).size > 1) {
    return guess({ is: 'step' }, 'small whole numbers');
  }
  if (!has('hz') && share((text) => /^\d[\d.,]*\s*k?hz$/i.test(text)))
    return guess({ is: 'hz', unit: 'Hz' }, 'frequencies');
  return column;
}

const surest = ['said', 'known', 'guessed'] as const;

/** Of two columns of the same, the surer is taken, else the first; the other is left out. */
function withoutDoubles(columns: readonly Column[]): Column[] {
  const keyOf = ({ role }: Column): string | undefined => {
    if (role.is === 'note') return undefined;
    // Columns of distortion alike in their heads each belong to the volts they stand behind.
    if (role.is === 'thd') return undefined;
    return role.is === 'volts' ? `volts ${JSON.stringify(role.fixed)}` : role.is;
  };
  const taken = new Map<string, Column>();
  for (const certainty of surest) {
    for (const column of columns) {
      const key = keyOf(column);
      if (key !== undefined && column.certainty === certainty && !taken.has(key)) taken.set(key, column);
    }
  }
  return columns.map((column) => {
    const other = taken.get(keyOf(column) ?? '');
    if (!other || other === column || column.certainty === 'said') return column;
    const why = `${quoted(column.head)} would be the same as column ${columnLetters(other.at)}, ${quoted(other.head)}`;
    return { ...column, role: { is: 'note' }, certainty: 'guessed', why };
  });
}
