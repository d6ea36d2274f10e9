/** A sheet's readings of one profile as cells: the repeats at one output, step and frequency together. */
import { type Channel, channels } from '../../../schemas/index.ts';
import type { BenchReading, Entry } from '../../base/index.ts';
import { cleanThdPercent, dbToRelative } from '../../measure/index.ts';

/** What was read at one output, step and frequency. */
export interface Cell {
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  /** One number for the three above. */
  readonly key: number;
  /** The volts of its repeats: their median, of two the lower. */
  readonly volts: number;
  /** The median of its THD readings, per cent; null where none was taken. */
  readonly thdPercent: number | null;
  readonly readings: readonly BenchReading[];
}

/** What one session read of one profile. Lines of cells are drawn when they are first asked for, and kept. */
export class ProfileSheet {
  readonly profile: string;
  readonly session: Entry<'outputs'>;
  /** In the order they were first read. */
  readonly cells: readonly Cell[];
  readonly byKey: ReadonlyMap<number, Cell>;
  #series: readonly (readonly Cell[])[] | undefined;
  #curves: readonly (readonly Cell[])[] | undefined;
  #ofChannel: ReadonlyMap<Channel, readonly Cell[]> | undefined;

  /** Brings the readings together by output, step and frequency. */
  constructor(profile: string, session: Entry<'outputs'>, readings: readonly BenchReading[]) {
    this.profile = profile;
    this.session = session;
    this.byKey = cellsByKey(readings);
    this.cells = [...this.byKey.values()];
  }

  /** The cells of one output, in the order they were first read. */
  ofChannel(channel: Channel): readonly Cell[] {
    this.#ofChannel ??= Map.groupBy(this.cells, (cell) => cell.channel);
    return this.#ofChannel.get(channel) ?? [];
  }

  /** The cells of one output and frequency by rising step, as long as they read anything. */
  get series(): readonly (readonly Cell[])[] {
    this.#series ??= linesOf(this.cells, ({ key }) => Math.floor(key / 256)).map((cells) =>
      cells.sort((a, b) => a.step - b.step),
    );
    return this.#series;
  }

  /** The cells of one output and step by rising frequency, as long as they read anything. */
  get curves(): readonly (readonly Cell[])[] {
    this.#curves ??= linesOf(this.cells, ({ key }) => key % 1024).map((cells) =>
      cells.sort((a, b) => a.hz - b.hz),
    );
    return this.#curves;
  }
}

/** Cells that read anything, together where `lineOf` gives the same. */
function linesOf(cells: readonly Cell[], lineOf: (cell: Cell) => number): Cell[][] {
  const lines = new Map<number, Cell[]>();
  for (const cell of cells) {
    if (cell.volts === 0) continue;
    const line = lineOf(cell);
    const known = lines.get(line);
    if (known) known.push(cell);
    else lines.set(line, [cell]);
  }
  return [...lines.values()];
}

export function cellKey(channel: Channel, step: number, hz: number): number {
  return (Math.round(hz * 1000) * 4 + channels.indexOf(channel)) * 256 + step;
}

function cellsByKey(readings: readonly BenchReading[]): Map<number, Cell> {
  const byKey = new Map<number, Cell>();
  const repeats = new Map<number, BenchReading[]>();
  for (const reading of readings) {
    const { channel, step, hz, voltsRms, thdPercent } = reading;
    const key = cellKey(channel, step, hz);
    const first = byKey.get(key);
    if (!first) {
      byKey.set(key, { channel, step, hz, key, volts: voltsRms, thdPercent, readings: [reading] });
      continue;
    }
    const known = repeats.get(key);
    if (known) known.push(reading);
    else repeats.set(key, [...first.readings, reading]);
  }
  for (const [key, readingsOfCell] of repeats) {
    const first = byKey.get(key);
    if (first) byKey.set(key, repeatedCell(first, readingsOfCell));
  }
  return byKey;
}

function repeatedCell({ channel, step, hz, key }: Cell, readings: readonly BenchReading[]): Cell {
  const volts = lowerMedian(readings.map((one) => one.voltsRms));
  const thd = readings.flatMap((one) => one.thdPercent ?? []);
  return { channel, step, hz, key, volts, thdPercent: thd.length === 0 ? null : lowerMedian(thd), readings };
}

function lowerMedian(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[(sorted.length - 1) >> 1] ?? Number.NaN;
}

/** The median of values, or undefined for none. */
export function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle];
  return sorted.length % 2 === 1 || upper === undefined ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
}

/**
 * How far a cell’s volts may lie from the truth by what its session states: voltmeter, and unless they are
 * shared with what it is compared to, signal, load and, past the clean region, supply. Relative; limits added
 * up, so that it errs on the side of letting a reading pass. `volts` stand for those of the cell if given.
 */
export function toleranceOf(
  cell: Cell,
  { session }: ProfileSheet,
  against: 'own' | 'others',
  volts = cell.volts,
): number {
  const { instrument, signal, load, supply } = session.data;
  const band = instrument.accuracy.find((one) => cell.hz >= one.fromHz && cell.hz <= one.toHz);
  const own = ((band?.counts ?? 10) + 1) * (instrument.resolutionVolts / volts) + usualScatter;
  if (against === 'own') return own;
  const gain = (band?.ofReadingPercent ?? 5) / 100;
  const rail = (cell.thdPercent ?? 0) > cleanThdPercent / 2 ? supply.toleranceVolts / supply.volts : 0;
  return own + gain + dbToRelative(signal.levelToleranceDb) + load.tolerancePercent / 1000 + rail;
}

/** How far repeats of a reading scatter, relative: common practice, no source. */
const usualScatter = 0.005;

/**
 * The cells of a line that are far enough above the last digit to be told by those beside them. A small one is
 * kept where it follows a louder one: it may be a louder one written wrongly, and is no silence.
 */
export function legibleOf(line: readonly Cell[], sheet: ProfileSheet, widest = widestLegible): Cell[] {
  let loudest = 0;
  return line.filter((cell) => {
    const isDrop = cell.volts * 4 < loudest * 3 && toleranceOf(cell, sheet, 'own', loudest) < widest;
    loudest = Math.max(loudest, cell.volts);
    return isDrop || toleranceOf(cell, sheet, 'own') < widest;
  });
}

const widestLegible = 0.06;
