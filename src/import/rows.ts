/** The rows below a header → readings, and every row that is not understood, with why. */
import { type Channel, readingSchema } from '../../schemas/index.ts';
import { type DataPath, type Positions, validate } from '../base/index.ts';
import { type Cell, cellName, cellText, columnLetters, quoted, type Sheet, type SheetRow } from './cell.ts';
import {
  channelIn,
  hzIn,
  isBlank,
  thdIn,
  type Value,
  type ValueSettings,
  voltsIn,
  wholeIn,
} from './cell-values.ts';
import { channelOf } from './channels.ts';
import { type Column, headKey } from './columns.ts';
import { conditionsIn, factSpecs } from './facts.ts';
import type { Header } from './header.ts';
import type { ProfileBook } from './profile-book.ts';
import { type ReadingDraft, type SheetReading, withRepeats } from './repeats.ts';
import type { Fixed, KeyName } from './role.ts';
import { pairThd, type ValueColumn, valueColumns } from './thd-columns.ts';

/** A row, or a cell of it, that is not understood. */
export interface RowFault {
  readonly row: number;
  readonly line: number;
  /** `B7`, or the row alone. */
  readonly place: string;
  readonly text: string;
  readonly problem: string;
  readonly help: string;
}

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

export interface RowSettings extends ValueSettings {
  readonly book: ProfileBook;
  /** What holds for all rows that do not say otherwise. */
  readonly given: Given;
  readonly channels: ReadonlyMap<string, Channel>;
  readonly isLeftOut: (row: number) => boolean;
  /** What no column and nothing said gives: it is asked once, not told in every row. */
  readonly asked: ReadonlySet<KeyName>;
}

/** Key values by name, as the cells they were said in. */
export type Given = Readonly<Partial<Record<KeyName, Cell>>>;

const mostFaults = 10_000;
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

/** A key as it stands in force: its value, or that the last cell of it was not understood. */
type Held = { readonly value: unknown } | { readonly brokenAt: string };

class RowReader {
  readonly #settings: RowSettings;
  readonly #keys: readonly Column[];
  readonly #volts: readonly ValueColumn[];
  readonly #thdOf: ReadonlyMap<ValueColumn, ValueColumn>;
  readonly #heads: readonly string[];
  readonly #held = new Map<KeyName, Held>();
  readonly #drafts: ReadingDraft[] = [];
  readonly #faults: RowFault[] = [];
  readonly #leftOut: { row: number; why: string }[] = [];
  readonly #filledDown = new Map<KeyName, number>();
  readonly #cellsRead = new Map<string, Map<Cell, Value<unknown>>>();
  #faultCount = 0;
  readonly #lacking = new Set<KeyName>();
  #isSilent = false;
  #notFilledIn = 0;

  constructor({ columns }: Header, settings: RowSettings) {
    this.#settings = settings;
    // The unit and the profile first: with another profile everything else begins anew.
    const order: readonly string[] = ['unit', 'profile'];
    const keys = columns.filter(({ role: { is } }) => is !== 'volts' && is !== 'thd' && is !== 'note');
    this.#keys = [
      ...order.flatMap((is) => keys.filter(({ role }) => role.is === is)),
      ...keys.filter(({ role }) => !order.includes(role.is)),
    ];
    this.#volts = valueColumns(columns).filter(({ role }) => role.is === 'volts');
    this.#thdOf = pairThd(columns).of;
    this.#heads = columns.map(({ head }) => headKey(head));
    for (const [key, cell] of Object.entries(settings.given) as [KeyName, Cell][]) {
      this.#hold(key, cell, undefined, { row: 0, line: 0, cells: [] }, 'Hz');
    }
  }

  read(row: SheetRow): void {
    this.#isSilent = this.#settings.isLeftOut(row.row);
    if (this.#isSilent) {
      // What it says of the rows below holds all the same: else they would take it from further above.
      this.#leftOut.push({ row: row.row, why: 'as you say' });
      if (!this.#isSection(row)) for (const column of this.#keys) this.#readKey(column, row, false);
      return;
    }
    if (this.#isHeadAgain(row)) return;
    const hasValues = this.#volts.some(
      (column) => !isBlank(row.cells[column.at]) || !isBlank(row.cells[this.#thdOf.get(column)?.at ?? -1]),
    );
    if (!hasValues && this.#isSection(row)) return;
    const summary = row.cells.map(cellText).find((text) => isSummary.test(text));
    if (summary !== undefined) {
      this.#leftOut.push({ row: row.row, why: `it says “${summary}”: no reading, but made of some` });
      return;
    }
    const before = this.#faultCount;
    for (const column of this.#keys) this.#readKey(column, row, hasValues);
    if (!hasValues) {
      this.#notFilledIn += this.#volts.length;
      return;
    }
    if (this.#faultCount > before) return;
    for (const column of this.#volts) this.#readValue(column, row);
  }

  conclude(): RowsRead {
    this.#isSilent = false;
    const { readings, numbered } = withRepeats(this.#drafts);
    const sound = readings.filter((reading) => this.#isWithinBounds(reading));
    return {
      readings: sound,
      faults: this.#faults.sort((a, b) => a.row - b.row),
      faultCount: this.#faultCount,
      notFilledIn: this.#notFilledIn,
      filledDown: this.#filledDown,
      leftOut: this.#leftOut,
      numberedRepeats: numbered,
      lacking: this.#lacking,
    };
  }

  #readKey(column: Column, row: SheetRow, hasValues: boolean): void {
    const key = column.role.is as KeyName;
    const cell = row.cells[column.at];
    if (isBlank(cell) || cell === undefined) {
      // A blank number of a repeat means that it was not numbered.
      if (key === 'repeat') this.#held.delete('repeat');
      else if (hasValues && this.#held.has(key)) {
        this.#filledDown.set(key, (this.#filledDown.get(key) ?? 0) + 1);
      }
      return;
    }
    this.#hold(key, cell, column.at, row, column.role.is === 'hz' ? column.role.unit : 'Hz');
  }

  #hold(key: KeyName, cell: Cell, at: number | undefined, row: SheetRow, unit: 'Hz' | 'kHz'): void {
    const value = this.#keyValue(key, cell, unit);
    if (key === 'profile' || key === 'unit') {
      const held = this.#held.get(key);
      const isOther =
        held !== undefined && !('value' in held && 'value' in value && held.value === value.value);
      // What stood above belongs to the profile above.
      if (isOther) for (const other of ['channel', 'step', 'hz'] as const) this.#forget(other);
    }
    if (value.problem === undefined) {
      this.#held.set(key, { value: value.value });
      return;
    }
    const place = at === undefined ? 'what is said' : cellName(at, row.row);
    this.#held.set(key, { brokenAt: place });
    this.#fault(row, place, cell, value.problem, value.help);
  }

  /** Back to what holds for the whole sheet, if anything does. */
  #forget(key: KeyName): void {
    this.#held.delete(key);
    const given = this.#settings.given[key];
    if (given !== undefined) this.#hold(key, given, undefined, { row: 0, line: 0, cells: [] }, 'Hz');
  }

  #keyValue(key: KeyName, cell: Cell, unit: 'Hz' | 'kHz'): Value<unknown> {
    if (key === 'unit') return { value: String(cell) };
    const heldUnit = this.#held.get('unit');
    const family = heldUnit && 'value' in heldUnit ? String(heldUnit.value) : undefined;
    // Of another unit the same code is another profile; a number and a text alike may not be the same.
    const kind = `${key} ${unit} ${typeof cell} ${key === 'profile' ? family : ''}`;
    const known = this.#cellsRead.get(kind) ?? new Map<Cell, Value<unknown>>();
    const before = known.get(cell);
    if (before) return before;
    const value = this.#keyValueOf(key, cell, unit, family);
    if (known.size < 10_000) this.#cellsRead.set(kind, known.set(cell, value));
    return value;
  }

  #keyValueOf(key: KeyName, cell: Cell, unit: 'Hz' | 'kHz', family: string | undefined): Value<unknown> {
    switch (key) {
      case 'channel':
        return channelIn(cell, this.#settings.channels);
      case 'hz':
        return hzIn(cell, unit, this.#settings);
      case 'step':
      case 'repeat':
        return wholeIn(cell);
      default: {
        const found = this.#settings.book.find(cell, family);
        return found.problem === undefined ? { value: found.id } : found;
      }
    }
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
        this.#fault(row, cellName(thd.at, row.row), thdCell, 'has no volts beside it', help);
      }
      return;
    }
    const volts = voltsIn(cell, role.is === 'volts' ? role.unit : undefined, this.#settings);
    if (volts.problem !== undefined) {
      this.#fault(row, cellName(at, row.row), cell, volts.problem, volts.help.replace('HEAD', column.head));
      return;
    }
    let thdPercent: number | null = null;
    if (thd && thdCell !== undefined && !isBlank(thdCell)) {
      const read = thdIn(thdCell, thd.role.is === 'thd' ? thd.role.unit : undefined, this.#settings);
      if (read.problem !== undefined) {
        this.#fault(row, cellName(thd.at, row.row), thdCell, read.problem, read.help);
        return;
      }
      thdPercent = read.value;
    }
    const keys = this.#keysFor(role.fixed, row);
    if (keys)
      this.#drafts.push({ ...keys, voltsRms: volts.value, thdPercent, row: row.row, line: row.line, at });
  }

  /** Profile, output, step and frequency of a reading: by the head of its column, its row, or the rows above. */
  #keysFor(
    fixed: Fixed,
    row: SheetRow,
  ): Pick<ReadingDraft, 'profile' | 'channel' | 'step' | 'hz' | 'repeat'> | undefined {
    const missing: string[] = [];
    const of = <T>(key: KeyName, own: T | undefined): T | undefined => {
      if (own !== undefined) return own;
      const held = this.#held.get(key);
      if (held && 'value' in held) return held.value as T;
      if (held) missing.push(`${keyWords[key]} (${held.brokenAt} is not understood)`);
      else if (this.#settings.asked.has(key)) this.#lacking.add(key);
      else if (key !== 'repeat') missing.push(keyWords[key]);
      return undefined;
    };
    const profile = of<string>('profile', undefined);
    const channel = of<Channel>('channel', fixed.channel);
    const step = of<number>('step', fixed.step);
    const hz = of<number>('hz', fixed.hz);
    const repeat = of<number>('repeat', fixed.repeat);
    if (profile !== undefined && channel !== undefined && step !== undefined && hz !== undefined) {
      return { profile, channel, step, hz, repeat };
    }
    if (missing.length === 0) return undefined;
    const [first = ''] = missing;
    const name = Object.entries(keyWords).find(([, words]) => first.startsWith(words))?.[0];
    this.#fault(
      row,
      String(row.row),
      '',
      `has no ${missing.join(', no ')}`,
      `Write it in the row where it begins; where one holds for the whole sheet, say --fact ${factNames[name as KeyName] ?? 'code'}=….`,
    );
    return undefined;
  }

  /** A line between blocks of readings that says what those below are of: `Profile: 8B0S-I5Z`, or a code alone. */
  #isSection(row: SheetRow): boolean {
    const filled = row.cells.filter((cell) => cell !== '');
    const { facts, others } = conditionsIn([row]);
    if (others.length === 0 && facts.length > 0) {
      for (const { name, text } of facts) {
        const spec = factSpecs[name];
        if (spec?.kind === 'key') this.#hold(spec.field as KeyName, text, undefined, row, 'Hz');
        else
          this.#leftOut.push({
            row: row.row,
            why: `“${name}: ${text}” stands between readings: say it above the header`,
          });
      }
      return true;
    }
    const at = row.cells.findIndex((cell) => cell !== '');
    const [only] = filled;
    if (filled.length !== 1 || only === undefined) return false;
    const column = this.#keys.find((one) => one.at === at);
    if (column?.role.is === 'profile') return false;
    if (this.#settings.book.find(only, undefined).problem === undefined) {
      this.#hold('profile', only, at, row, 'Hz');
      return true;
    }
    if (column && this.#keyValue(column.role.is as KeyName, only, 'Hz').problem === undefined) return false;
    if (channelOf(String(only))) {
      this.#hold('channel', only, at, row, 'Hz');
      return true;
    }
    if (this.#keys.some(({ role }) => role.is === 'profile')) {
      this.#leftOut.push({
        row: row.row,
        why: `${quoted(only)} stands alone and names nothing that is known`,
      });
      return true;
    }
    // It may be the code of what stands below, and must not be passed over.
    this.#hold('profile', only, at, row, 'Hz');
    return true;
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
    const { row, line, at, ...data } = reading;
    if (readingSchema.safeParse(data).success) return true;
    const columnOf = (path: DataPath): number => {
      const key = String(path[0]);
      if (key === 'voltsRms') return at;
      if (key === 'thdPercent')
        return this.#thdOf.get(this.#volts.find((one) => one.at === at) ?? noColumn)?.at ?? -1;
      return this.#keys.find(({ role }) => role.is === key)?.at ?? -1;
    };
    const positions: Positions = {
      place: (path) => ({ file: '', line, column: columnOf(path) + 1, endLine: line, endColumn: 1 }),
      sourceOf: () => undefined,
      restOfLine: () => '',
      oddNumbers: [],
    };
    for (const { place, message, help } of validate(readingSchema, data, positions, 'reading').findings) {
      const name = place.column > 0 ? `${columnLetters(place.column - 1)}${row}` : String(row);
      this.#fault({ row, line, cells: [] }, name, '', message.replace(/\.$/, ''), help);
    }
    return false;
  }

  #fault(row: SheetRow, place: string, cell: Cell | undefined, problem: string, help: string): void {
    if (this.#isSilent) return;
    this.#faultCount += 1;
    if (this.#faults.length >= mostFaults) return;
    this.#faults.push({ row: row.row, line: row.line, place, text: cellText(cell), problem, help });
  }
}

const noColumn: ValueColumn = {
  at: -1,
  head: '',
  role: { is: 'volts', unit: undefined, fixed: {} },
  certainty: 'said',
  why: '',
};

const keyWords: Readonly<Record<KeyName, string>> = {
  profile: 'profile',
  unit: 'unit',
  channel: 'output',
  step: 'volume step',
  hz: 'frequency',
  repeat: 'repeat',
};

const factNames: Readonly<Partial<Record<KeyName, string>>> = {
  profile: 'code',
  channel: 'channel',
  step: 'step',
  hz: 'frequency',
};
