/** Profile, output, step and frequency as they are in force while rows are read: said in the row, above it or for all. */
import type { Channel } from '../../schemas/index.ts';
import { type Cell, cellName, type SheetRow } from './cell.ts';
import { channelIn, hzIn, isBlank, type Value, type ValueSettings, wholeIn } from './cell-values.ts';
import type { Column } from './columns.ts';
import type { ProfileBook } from './profile-book.ts';
import type { ReadingDraft } from './repeats.ts';
import type { Fixed, KeyName } from './role.ts';
import type { RowFaults } from './row-faults.ts';
import type { HzUnit } from './units.ts';

/** Key values by name, as the cells they were said in. */
export type Given = Readonly<Partial<Record<KeyName, Cell>>>;

export interface KeySettings extends ValueSettings {
  readonly book: ProfileBook;
  /** What holds for all rows that do not say otherwise. */
  readonly given: Given;
  readonly channels: ReadonlyMap<string, Channel>;
  /** What no column and nothing said gives: it is asked once, not told in every row. */
  readonly asked: ReadonlySet<KeyName>;
}

/** What a reading is of. */
export type ReadingKeys = Pick<ReadingDraft, 'profile' | 'channel' | 'step' | 'hz' | 'repeat'>;

/** A key as it stands in force: its value, or that the last cell of it was not understood. */
type Held = { readonly value: unknown } | { readonly brokenAt: string };

/** So many different cells of a key are remembered with what they say. */
const mostRemembered = 10_000;

export class HeldKeys {
  readonly #settings: KeySettings;
  readonly #faults: RowFaults;
  readonly #held = new Map<KeyName, Held>();
  readonly #cellsRead = new Map<string, Map<Cell, Value<unknown>>>();
  readonly #filledDown = new Map<KeyName, number>();
  readonly #lacking = new Set<KeyName>();

  /** @param faults where it is told what is not understood. */
  constructor(settings: KeySettings, faults: RowFaults) {
    this.#settings = settings;
    this.#faults = faults;
    for (const key of Object.keys(settings.given) as KeyName[]) this.#holdGiven(key);
  }

  /** Cells that take the value of the cell above, by key. */
  get filledDown(): ReadonlyMap<KeyName, number> {
    return this.#filledDown;
  }

  /** What readings lack that no column and nothing said gives. */
  get lacking(): ReadonlySet<KeyName> {
    return this.#lacking;
  }

  /** Takes what the row says in a column of keys. @param hasValues whether readings stand in the row. */
  take(column: Column, row: SheetRow, hasValues: boolean): void {
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
    this.hold(key, cell, column.at, row, column.role.is === 'hz' ? column.role.unit : 'Hz');
  }

  /** From this row on the key is what the cell says. @param at the column of the cell; absent: said outside the sheet. */
  hold(key: KeyName, cell: Cell, at: number | undefined, row: SheetRow, unit: HzUnit = 'Hz'): void {
    const value = this.valueOf(key, cell, unit);
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
    this.#faults.add(row, place, cell, value.problem, value.help);
  }

  /** What a cell says of a key, or why that is not understood. */
  valueOf(key: KeyName, cell: Cell, unit: HzUnit = 'Hz'): Value<unknown> {
    if (key === 'unit') return { value: String(cell) };
    const heldUnit = this.#held.get('unit');
    const family = heldUnit && 'value' in heldUnit ? String(heldUnit.value) : undefined;
    // Of another unit the same code is another profile; a number and a text alike may not be the same.
    const kind = `${key} ${unit} ${typeof cell} ${key === 'profile' ? family : ''}`;
    const known = this.#cellsRead.get(kind) ?? new Map<Cell, Value<unknown>>();
    const before = known.get(cell);
    if (before) return before;
    const value = this.#valueRead(key, cell, unit, family);
    if (known.size < mostRemembered) this.#cellsRead.set(kind, known.set(cell, value));
    return value;
  }

  /** What a reading is of: by the head of its column, its row, or the rows above; undefined where that is not known. */
  ofReading(fixed: Fixed, row: SheetRow): ReadingKeys | undefined {
    const missing: { readonly key: KeyName; readonly text: string }[] = [];
    const of = <T>(key: KeyName, own: T | undefined): T | undefined => {
      if (own !== undefined) return own;
      const held = this.#held.get(key);
      if (held && 'value' in held) return held.value as T;
      if (held) missing.push({ key, text: `${keyWords[key]} (${held.brokenAt} is not understood)` });
      else if (this.#settings.asked.has(key)) this.#lacking.add(key);
      else if (key !== 'repeat') missing.push({ key, text: keyWords[key] });
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
    const [first] = missing;
    if (!first) return undefined;
    this.#faults.add(
      row,
      String(row.row),
      '',
      `has no ${missing.map(({ text }) => text).join(', no ')}`,
      `Write it in the row where it begins; where one holds for the whole sheet, say --fact ${factNames[first.key] ?? 'code'}=….`,
    );
    return undefined;
  }

  /** Back to what holds for the whole sheet, if anything does. */
  #forget(key: KeyName): void {
    this.#held.delete(key);
    this.#holdGiven(key);
  }

  #holdGiven(key: KeyName): void {
    const cell = this.#settings.given[key];
    if (cell !== undefined) this.hold(key, cell, undefined, { row: 0, line: 0, cells: [] });
  }

  #valueRead(key: KeyName, cell: Cell, unit: HzUnit, family: string | undefined): Value<unknown> {
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
}

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
