/** The cells of a sheet as values of its columns, each held against the schema of a reading. */
import type { z } from 'zod';
import { type Reading, readingColumns, readingSchema } from '../../schemas/index.ts';

type Column = keyof Reading;
type CellData = string | number | null;

/** A row as data for the schema: numbers where a cell is a plain decimal number, the cell's text elsewhere. */
export function rowData(cells: readonly string[]): Record<Column, CellData> {
  return Object.fromEntries(
    readingColumns.map((column, index) => [column, cellData(column, cells[index] ?? '')]),
  ) as Record<Column, CellData>;
}

function cellData(column: Column, cell: string): CellData {
  if (column === 'profile' || column === 'channel') return cell;
  if (column === 'thdPercent' && cell === '') return null;
  return decimalNumber.test(cell) ? Number(cell) : cell;
}

const decimalNumber = /^-?\d+(\.\d+)?([eE][-+]?\d+)?$/;

/**
 * The cells of one column, checked. A sheet writes the same few profiles, steps and frequencies again and again:
 * each is held against the schema once.
 */
class CheckedColumn<C extends Column> {
  readonly #column: C;
  readonly #schema: z.ZodType<Reading[C]>;
  readonly #known = new Map<string, Reading[C]>();
  #lastCell: string | undefined;
  #last: Reading[C] | undefined;

  constructor(column: C) {
    this.#column = column;
    this.#schema = readingSchema.shape[column] as unknown as z.ZodType<Reading[C]>;
  }

  /** The value of a cell; undefined where it is not what the column asks for. */
  value(cell: string): Reading[C] | undefined {
    // Often it is what the row before reads.
    if (cell === this.#lastCell) return this.#last;
    const known = this.#known.get(cell);
    const data = known === undefined ? this.#checked(cell) : known;
    if (data !== undefined) [this.#lastCell, this.#last] = [cell, data];
    return data;
  }

  #checked(cell: string): Reading[C] | undefined {
    const { data } = this.#schema.safeParse(cellData(this.#column, cell));
    if (data !== undefined && this.#known.size < mostKnown) this.#known.set(cell, data);
    return data;
  }
}

/** A column of ever new values must not fill the memory. */
const mostKnown = 1000;

/**
 * The volts of a sheet, checked. Hardly ever are they written twice, but what the schema asks for is a range:
 * between two numbers it has taken it takes all.
 */
class CheckedVolts {
  #least = Number.POSITIVE_INFINITY;
  #most = Number.NEGATIVE_INFINITY;

  /** The volts in a cell; undefined where they are not what the column asks for. */
  value(cell: string): number | undefined {
    const written = cellData('voltsRms', cell);
    if (typeof written === 'number' && written >= this.#least && written <= this.#most) return written;
    const { data } = readingSchema.shape.voltsRms.safeParse(written);
    if (data === undefined) return undefined;
    this.#least = Math.min(this.#least, data);
    this.#most = Math.max(this.#most, data);
    return data;
  }
}

/** The rows of one sheet, checked: a row is right where all its cells are, as no column depends on another. */
export class CheckedRows {
  readonly #profile = new CheckedColumn('profile');
  readonly #channel = new CheckedColumn('channel');
  readonly #step = new CheckedColumn('step');
  readonly #hz = new CheckedColumn('hz');
  readonly #voltsRms = new CheckedVolts();
  readonly #thdPercent = new CheckedColumn('thdPercent');
  readonly #repeat = new CheckedColumn('repeat');

  /** The reading of a row; undefined where any cell is not what its column asks for. */
  reading(cells: readonly string[]): Reading | undefined {
    const profile = this.#profile.value(cells[0] ?? '');
    const channel = this.#channel.value(cells[1] ?? '');
    const step = this.#step.value(cells[2] ?? '');
    const hz = this.#hz.value(cells[3] ?? '');
    const voltsRms = this.#voltsRms.value(cells[4] ?? '');
    const thdPercent = this.#thdPercent.value(cells[5] ?? '');
    const repeat = this.#repeat.value(cells[6] ?? '');
    if (profile === undefined || channel === undefined || step === undefined || hz === undefined)
      return undefined;
    if (voltsRms === undefined || thdPercent === undefined || repeat === undefined) return undefined;
    return { profile, channel, step, hz, voltsRms, thdPercent, repeat };
  }
}
