/** The rows below a header → readings, and every row that is not understood, with why. */
import type { Reading } from '../../schemas/index.ts';
import { cellName, cellText, type Sheet, type SheetRow } from './cell.ts';
import { isBlank, thdIn, voltsIn } from './cell-values.ts';
import { type Column, headKey } from './columns.ts';
import type { Header } from './header.ts';
import { HeldKeys, type KeySettings } from './held-keys.ts';
import { boundsFaults } from './reading-bounds.ts';
import { type ReadingDraft, type SheetReading, withRepeats } from './repeats.ts';
import type { KeyName } from './role.ts';
import { type RowFault, RowFaults } from './row-faults.ts';
import { takeSection } from './section-row.ts';
import { pairThd, type ValueColumn, valueColumns } from './thd-columns.ts';

export interface RowsRead {
  readonly readings: readonly SheetReading[];
  readonly faults: readonly RowFault[];
  /** More are counted, not kept. */
  readonly faultCount: number;
  /** Cells for volts in which nothing stands. */
  readonly notFilledIn: number;
  /** Cells that take the value of the cell above, by key. */
  readonly filledDown: ReadonlyMap<KeyName, number>;
  /** Rows left out: as said, or because they are none of readings. */
  readonly leftOut: readonly { readonly row: number; readonly why: string }[];
  readonly numberedRepeats: number;
  /** What readings lack that no column and nothing said gives. */
  readonly lacking: ReadonlySet<KeyName>;
}

export interface RowSettings extends KeySettings {
  readonly isLeftOut: (row: number) => boolean;
}

const isSummary =
  /^(?:mean|average|avg\.?|median|sum|total|min\.?|max\.?|std\.?|stdev|mittelwert|mittel|summe|media|promedio)$/i;

/** Reads all rows below the header. */
export function readRows(sheet: Sheet, header: Header, settings: RowSettings): RowsRead {
  const reader = new RowReader(header, settings);
  for (let at = header.at + header.length; at < sheet.rows.length; at += 1) {
    const row = sheet.rows[at];
    if (row) reader.read(row);
  }
  return reader.conclude();
}

class RowReader {
  readonly #settings: RowSettings;
  readonly #keyColumns: readonly Column[];
  readonly #volts: readonly ValueColumn[];
  readonly #thdOf: ReadonlyMap<ValueColumn, ValueColumn>;
  readonly #heads: readonly string[];
  readonly #faults = new RowFaults();
  readonly #keys: HeldKeys;
  readonly #drafts: ReadingDraft[] = [];
  readonly #leftOut: { row: number; why: string }[] = [];
  #notFilledIn = 0;

  constructor({ columns }: Header, settings: RowSettings) {
    this.#settings = settings;
    // The unit and the profile first: with another profile everything else begins anew.
    const order: readonly string[] = ['unit', 'profile'];
    const keys = columns.filter(({ role: { is } }) => is !== 'volts' && is !== 'thd' && is !== 'note');
    this.#keyColumns = [
      ...order.flatMap((is) => keys.filter(({ role }) => role.is === is)),
      ...keys.filter(({ role }) => !order.includes(role.is)),
    ];
    this.#volts = valueColumns(columns).filter(({ role }) => role.is === 'volts');
    this.#thdOf = pairThd(columns).of;
    this.#heads = columns.map(({ head }) => headKey(head));
    this.#keys = new HeldKeys(settings, this.#faults);
  }

  read(row: SheetRow): void {
    this.#faults.isSilent = this.#settings.isLeftOut(row.row);
    if (this.#faults.isSilent) {
      // What it says of the rows below holds all the same: else they would take it from further above.
      this.#leaveOut(row, 'as you say');
      if (!this.#isSection(row)) this.#takeKeys(row, false);
      return;
    }
    if (this.#isHeadAgain(row)) return;
    const hasValues = this.#volts.some(
      (column) => !isBlank(row.cells[column.at]) || !isBlank(row.cells[this.#thdOf.get(column)?.at ?? -1]),
    );
    if (!hasValues && this.#isSection(row)) return;
    const summary = row.cells.map(cellText).find((text) => isSummary.test(text));
    if (summary !== undefined) {
      this.#leaveOut(row, `it says “${summary}”: no reading, but made of some`);
      return;
    }
    const before = this.#faults.count;
    this.#takeKeys(row, hasValues);
    if (!hasValues) {
      this.#notFilledIn += this.#volts.length;
      return;
    }
    if (this.#faults.count > before) return;
    for (const column of this.#volts) this.#readValue(column, row);
  }

  conclude(): RowsRead {
    this.#faults.isSilent = false;
    const { readings, numbered } = withRepeats(this.#drafts);
    const sound = readings.filter((reading) => this.#isWithinBounds(reading));
    return {
      readings: sound,
      faults: this.#faults.inOrder(),
      faultCount: this.#faults.count,
      notFilledIn: this.#notFilledIn,
      filledDown: this.#keys.filledDown,
      leftOut: this.#leftOut,
      numberedRepeats: numbered,
      lacking: this.#keys.lacking,
    };
  }

  #leaveOut({ row }: SheetRow, why: string): void {
    this.#leftOut.push({ row, why });
  }

  #takeKeys(row: SheetRow, hasValues: boolean): void {
    for (const column of this.#keyColumns) this.#keys.take(column, row, hasValues);
  }

  #isSection(row: SheetRow): boolean {
    return takeSection(row, this.#keyColumns, this.#keys, this.#settings.book, (why) =>
      this.#leaveOut(row, why),
    );
  }

  #readValue(column: ValueColumn, row: SheetRow): void {
    const { at, role } = column;
    const cell = row.cells[at];
    const thd = this.#thdOf.get(column);
    const thdCell = thd ? row.cells[thd.at] : undefined;
    if (cell === undefined || isBlank(cell)) {
      this.#notFilledIn += 1;
      if (thd && !isBlank(thdCell)) {
        const help = 'Write the volts it was read at, or clear it.';
        this.#faults.add(row, cellName(thd.at, row.row), thdCell, 'has no volts beside it', help);
      }
      return;
    }
    const volts = voltsIn(cell, role.is === 'volts' ? role.unit : undefined, this.#settings);
    if (volts.problem !== undefined) {
      const help = volts.help.replace('HEAD', column.head);
      this.#faults.add(row, cellName(at, row.row), cell, volts.problem, help);
      return;
    }
    let thdPercent: number | null = null;
    if (thd && thdCell !== undefined && !isBlank(thdCell)) {
      const read = thdIn(thdCell, thd.role.is === 'thd' ? thd.role.unit : undefined, this.#settings);
      if (read.problem !== undefined) {
        this.#faults.add(row, cellName(thd.at, row.row), thdCell, read.problem, read.help);
        return;
      }
      thdPercent = read.value;
    }
    const keys = this.#keys.ofReading(role.fixed, row);
    if (keys)
      this.#drafts.push({ ...keys, voltsRms: volts.value, thdPercent, row: row.row, line: row.line, at });
  }

  #isHeadAgain({ cells }: SheetRow): boolean {
    // A row of readings has figures where a head has words.
    if (this.#volts.some(({ at, head }) => /^\d/.test(cellText(cells[at])) && !/^\d/.test(head)))
      return false;
    const heads = cells.map((cell) => headKey(cellText(cell)));
    return (
      heads.some((text) => text !== '') && heads.every((text, at) => text === '' || text === this.#heads[at])
    );
  }

  #isWithinBounds(reading: SheetReading): boolean {
    const faults = boundsFaults(reading, (field) => this.#columnOf(field, reading));
    for (const { place, problem, help } of faults) this.#faults.add(reading, place, '', problem, help);
    return faults.length === 0;
  }

  /** The column a field of a reading comes from; -1 where it has none of its own. */
  #columnOf(field: keyof Reading, { at }: SheetReading): number {
    if (field === 'voltsRms') return at;
    if (field !== 'thdPercent') return this.#keyColumns.find(({ role }) => role.is === field)?.at ?? -1;
    const volts = this.#volts.find((one) => one.at === at);
    return (volts && this.#thdOf.get(volts)?.at) ?? -1;
  }
}
