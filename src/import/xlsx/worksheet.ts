/** A worksheet’s XML → its rows: values as stored, formulas by the value they last had, merged cells filled. */
import { type Cell, cellName, columnNumber, type SheetRow } from '../cell.ts';
import type { Shown } from './styles.ts';
import { type Attributes, eachTag } from './xml.ts';
import { damaged, tooLarge } from './zip.ts';

/** The bounds of a worksheet (ISO/IEC 29500-1, 18.3.1.73: 1,048,576 rows), and of what a bench sheet can be. */
const mostRows = 1_048_576;
const mostColumns = 500;
const mostCells = 8_000_000;
/** The day numbers count from, 1900 or 1904: two days before the 1st of January 1900, for a leap day it never had. */
const firstDay = { 1900: Date.UTC(1899, 11, 30), 1904: Date.UTC(1904, 0, 1) } as const;

export interface CellSetting {
  readonly sharedTexts: readonly string[];
  readonly shown: readonly Shown[];
  readonly epoch: 1900 | 1904;
}

export interface Worksheet {
  readonly rows: readonly SheetRow[];
  readonly mergedAreas: number;
  /** Cells with a formula that holds no value: the program that wrote it never worked it out. */
  readonly withoutValue: readonly string[];
}

export function readWorksheet(xml: string, setting: CellSetting): Worksheet {
  const rows = new Map<number, Cell[]>();
  const merges: string[] = [];
  const withoutValue: string[] = [];
  let row = 0;
  let column = -1;
  let cells: Cell[] = [];
  let count = 0;
  let at: Attributes | undefined;
  let value = '';
  let hasFormula = false;
  let within = '';
  let isPhonetic = false;
  const place = (cell: Cell): void => {
    if (cell === '') return;
    count += 1;
    if (count > mostCells) throw tooLarge();
    while (cells.length < column) cells.push('');
    cells[column] = cell;
  };
  eachTag(xml, {
    open(name, attributes) {
      const { r: own, ref = '' } = attributes;
      if (name === 'row') {
        row = own === undefined ? row + 1 : Number(own);
        if (!(row >= 1 && row <= mostRows)) throw tooLarge();
        cells = rows.get(row) ?? [];
        rows.set(row, cells);
        column = -1;
      } else if (name === 'c') {
        column = own === undefined ? column + 1 : columnNumber(own.replace(/\d+$/, ''));
        if (!(column >= 0)) throw damaged();
        at = attributes;
        value = '';
        hasFormula = false;
      } else if (name === 'f') hasFormula = true;
      else if (name === 'mergeCell') merges.push(ref);
      else if (name === 'rPh') isPhonetic = true;
      within = name;
    },
    text(text) {
      if (at && !isPhonetic && (within === 'v' || within === 't')) value += text;
    },
    close(name) {
      within = '';
      if (name === 'rPh') isPhonetic = false;
      if (name !== 'c' || !at) return;
      // Far to the right there is nothing but stray formats.
      if (value !== '' && column >= mostColumns) throw tooLarge();
      if (value === '' && hasFormula) withoutValue.push(cellName(column, row));
      else place(cellOf(at, value, setting));
      at = undefined;
    },
  });
  const mergedAreas = fillAreas(rows, merges);
  return {
    rows: [...rows]
      .sort(([a], [b]) => a - b)
      .filter(([, own]) => own.some((cell) => cell !== ''))
      .map(([number, own]) => ({ row: number, line: number, cells: own.map((cell) => cell ?? '') })),
    mergedAreas,
    withoutValue,
  };
}

function cellOf({ t: type = 'n', s: style = '0' }: Attributes, value: string, setting: CellSetting): Cell {
  if (type === 's') return (setting.sharedTexts[Number(value)] ?? '').replace(/\s+/g, ' ').trim();
  if (type === 'b') return value === '1' ? 'TRUE' : 'FALSE';
  if (type === 'd') return value.slice(0, 10);
  if (type !== 'n') return value.replace(/\s+/g, ' ').trim();
  if (value === '') return '';
  const number = Number(value);
  if (!Number.isFinite(number)) throw damaged();
  const shown = setting.shown[Number(style)];
  if (shown === 'date') return dateOf(number, setting.epoch);
  return shown === 'percent' ? `${Number((number * 100).toPrecision(12))} %` : number;
}

/** A date, or where there is none but a time of day, the time. */
function dateOf(days: number, epoch: 1900 | 1904): Cell {
  const time = new Date(firstDay[epoch] + Math.round(days * 86_400) * 1000);
  if (Number.isNaN(time.getTime())) return days;
  const text = time.toISOString();
  return days >= 1 ? text.slice(0, 10) : text.slice(11, 16);
}

/** More than this is no table a person merged cells in. */
const mostFilled = 1_000_000;

/** Gives every cell of each merged area the value of its first; how many areas there were to fill. */
function fillAreas(rows: Map<number, Cell[]>, areas: readonly string[]): number {
  let filled = 0;
  let cells = 0;
  for (const area of areas) {
    const [, left = '', top = '', right = '', bottom = ''] = /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(area) ?? [];
    const [from, to] = [columnNumber(left), columnNumber(right)];
    const value = rows.get(Number(top))?.[from];
    if (value === undefined || value === '' || from < 0 || to < from || to >= mostColumns) continue;
    cells += (Number(bottom) - Number(top) + 1) * (to - from + 1);
    if (cells > mostFilled) throw tooLarge();
    filled += 1;
    for (let row = Number(top); row <= Number(bottom); row += 1) {
      const own = rows.get(row);
      if (!own) continue;
      while (own.length < from) own.push('');
      for (let column = from; column <= to; column += 1) own[column] = value;
    }
  }
  return filled;
}
