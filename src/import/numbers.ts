/**
 * Figures as spreadsheets write them. Which sign stands before the decimals is found out over the whole sheet; what
 * may be read in two ways is asked, never guessed.
 */
import { type Cell, cellName } from './cell.ts';

export type DecimalSign = 'point' | 'comma';

export interface Figure {
  /** The figures alone. */
  readonly text: string;
  /** What stands behind them. */
  readonly unit: string;
  /** `<` where the cell gives a bound. */
  readonly bound: string;
}

const figure =
  /^([<>≤≥~≈±]?)\s*([-+\u2212\u2013]?(?:\d(?:[\d.,'’\u00a0\u202f ]*\d)?|[.,]\d+))((?:[eE][-+]?\d+)?)(?![\d.,])\s*([^\d\s].*)?$/su;

/** A cell that begins with figures, taken apart; undefined where it does not. */
export function figureOf(cell: string): Figure | undefined {
  const parts = figure.exec(cell);
  if (!parts) return undefined;
  const [, bound = '', digits = '', exponent = '', unit = ''] = parts;
  return { text: digits + exponent, unit: unit.trim(), bound };
}

/** What the way a number is written says of the sheet; `either` for 1,234, `nothing` for whole numbers. */
export type Evidence = DecimalSign | 'either' | 'nothing' | 'no number';

export function evidenceOf(text: string): Evidence {
  const plain = withoutGaps(text);
  if (plain === undefined) return 'no number';
  const marks = plain.replace(/[^.,]/g, '');
  const last = marks.at(-1);
  if (last === undefined) return 'nothing';
  const own: DecimalSign = last === ',' ? 'comma' : 'point';
  const other: DecimalSign = own === 'comma' ? 'point' : 'comma';
  const [whole = '', ...groups] = plain.split(last);
  if (marks.includes(last === ',' ? '.' : ',')) {
    const grouped = whole.split(last === ',' ? '.' : ',');
    return groups.length === 1 && areGroups(grouped) ? own : 'no number';
  }
  if (groups.length > 1) return areGroups([whole, ...groups]) ? other : 'no number';
  return areGroups([whole, groups[0] ?? '']) ? 'either' : own;
}

/** 1 to 3 figures, not beginning with a nought, then threes. */
function areGroups([first = '', ...rest]: readonly string[]): boolean {
  return /^[1-9]\d{0,2}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group));
}

/** Without sign, exponent, and gaps between thousands; undefined where the gaps stand anywhere else. */
function withoutGaps(text: string): string | undefined {
  const unsigned = text.replace(/^[-+\u2212\u2013]/, '').replace(/[eE][-+]?\d+$/, '');
  if (!/['’\u00a0\u202f ]/.test(unsigned)) return unsigned;
  const [whole = '', decimals, ...more] = unsigned.split(/[.,]/);
  if (more.length > 0 || /['’\u00a0\u202f ]/.test(decimals ?? '')) return undefined;
  return areGroups(whole.split(/['’\u00a0\u202f ]/)) ? unsigned.replace(/['’\u00a0\u202f ]/g, '') : undefined;
}

/** Most cells are whole numbers, or have a point that cannot part thousands. */
const plainPoint = /^\d+(?:\.(?:\d{1,2}|\d{4,}))?$/;

/** The number; undefined where it is none, or the sign has to be known and is not. */
export function numberOf(text: string, sign: DecimalSign | undefined): number | undefined {
  if (plainPoint.test(text)) return Number(text);
  const evidence = evidenceOf(text);
  if (evidence === 'no number') return undefined;
  if (evidence === 'either' && sign === undefined) return undefined;
  const decimal = evidence === 'either' || evidence === 'nothing' ? sign : evidence;
  const plain = text.replace(/[\u2212\u2013]/g, '-').replace(/['’\u00a0\u202f ]/g, '');
  const number =
    decimal === 'comma' ? plain.replaceAll('.', '').replace(',', '.') : plain.replaceAll(',', '');
  return Number(number);
}

/** What the figures of a sheet, gathered one by one, say of its decimals. */
export class SheetDecimals {
  readonly #first = new Map<Evidence, string>();
  #example = '';

  see(cell: Cell, row: number, column: number): void {
    if (typeof cell === 'number' || !/[.,]/.test(cell)) return;
    if (this.#first.has('point') && plainPoint.test(cell)) return;
    const found = figureOf(cell);
    if (!found) return;
    const evidence = evidenceOf(found.text);
    if (this.#first.has(evidence)) return;
    this.#first.set(evidence, `${cellName(column, row)} “${found.text}”`);
    if (evidence === 'either') this.#example = found.text;
  }

  /** The sign, or the question that is open. @param said what the person says it is. */
  conclude(said: DecimalSign | undefined): DecimalsFound {
    const comma = this.#first.get('comma');
    const point = this.#first.get('point');
    const either = this.#first.get('either');
    if (comma !== undefined && point !== undefined && said === undefined) {
      return {
        sign: undefined,
        question: `Decimals are written both ways: with a comma in ${comma}, with a point in ${point}.`,
        help: 'Put the one right that is wrong, or say --decimals comma or --decimals point: then the others are not read.',
      };
    }
    const sign = said ?? (comma !== undefined ? 'comma' : point !== undefined ? 'point' : undefined);
    if (sign === undefined && either !== undefined) {
      const [as, decimal] = [this.#example.replace(/[.,]/, ''), this.#example.replace(/[.,]/, '.')];
      return {
        sign,
        question: `${either} may be ${as} or ${Number(decimal)}, and no other cell tells which.`,
        help: 'Say --decimals comma or --decimals point.',
      };
    }
    return { sign, why: said ? 'as you say' : (comma ?? point) };
  }
}

export type DecimalsFound =
  | { readonly sign: DecimalSign | undefined; readonly why: string | undefined; readonly question?: never }
  | { readonly sign: undefined; readonly question: string; readonly help: string };
