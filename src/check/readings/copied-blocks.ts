/** Rows that two profiles read alike to the last digit, one after the other, as no two readings do. */
import type { BenchReading, Entry } from '../../base/index.ts';
import { cellKey } from './cells.ts';
import type { ChanceOfSame } from './chance-of-same.ts';

/** The rows of one profile in one session, in the order of the sheet. */
export interface Rows {
  readonly profile: string;
  readonly session: Entry<'outputs'>;
  readonly readings: readonly BenchReading[];
}

/** A block of rows of one profile that stands under another as well. */
export interface SameBlock {
  readonly a: readonly BenchReading[];
  readonly b: readonly BenchReading[];
  /** How many of them have digits enough to tell. */
  readonly telling: number;
  /** The chance that independent readings of one level are the same in all of them. */
  readonly chance: number;
}

/** Fewer rows that tell are no block. */
const leastRows = 4;
/** A number of three digits is this many times the last of them, at least. */
const leastCounts = 100;
/** Of the profiles that share rows this many are looked at: more are the same rows over again. */
const mostSharing = 4;

/** Pairs of sheets, of profiles that `mayShare` does not rule out, that have four telling rows in a row the same. */
export function pairsSharingRows(
  sheets: readonly Rows[],
  mayShare: (a: Rows, b: Rows) => boolean,
): [Rows, Rows][] {
  // Most rows have one holder: a list for each would cost more than all the rest.
  const first = new Map<number, number>();
  const more = new Map<number, number[]>();
  const pairs = new Set<number>();
  sheets.forEach((sheet, index) => {
    for (const mark of marksOf(sheet)) {
      const holder = first.get(mark);
      if (holder === undefined) first.set(mark, index);
      if (holder === undefined || holder === index) continue;
      const others = more.get(mark) ?? [];
      for (const other of [holder, ...others]) if (other !== index) pairs.add(other * sheets.length + index);
      if (others.length < mostSharing && !others.includes(index)) more.set(mark, [...others, index]);
    }
  });
  return [...pairs].flatMap((pair): [Rows, Rows][] => {
    const [a, b] = [sheets[Math.floor(pair / sheets.length)], sheets[pair % sheets.length]];
    return a && b && mayShare(a, b) ? [[a, b]] : [];
  });
}

/** A number for every four telling rows in a row: the same for the same rows, hardly ever for others. */
function marksOf({ session, readings }: Rows): number[] {
  const rows: number[] = [];
  for (const reading of readings) {
    if (!isTelling(reading, session)) continue;
    const key = keyOf(reading);
    // In two parts of 32 bits: the key has more than one holds.
    const place = mixed(key | 0, (key / 2 ** 32) | 0);
    rows.push(mixed(place, Math.round(reading.voltsRms * 1e6)));
  }
  const marks: number[] = [];
  for (let end = leastRows; end <= rows.length; end += 1) {
    let mark = 0;
    for (let at = end - leastRows; at < end; at += 1) mark = mixed(mark, rows[at] ?? 0);
    marks.push(mark);
  }
  return marks;
}

/** Two numbers of 32 bits as one, each bit of them in every bit of it. */
function mixed(a: number, b: number): number {
  let hash = Math.imul(a ^ Math.imul(b, 0x9e3779b1), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 15), 0xc2b2ae35);
  return hash ^ (hash >>> 13);
}

function isTelling({ voltsRms }: BenchReading, { data }: Entry<'outputs'>): boolean {
  return voltsRms >= leastCounts * data.instrument.resolutionVolts;
}

function keyOf({ channel, step, hz, repeat }: BenchReading): number {
  return cellKey(channel, step, hz) * 64 + repeat;
}

/** The blocks of `a` that stand in `b` too; quiet and silent rows go with those beside them and prove nothing. */
export function sameBlocks(a: Rows, b: Rows, chances: readonly [ChanceOfSame, ChanceOfSame]): SameBlock[] {
  const there = new Map(b.readings.map((reading) => [keyOf(reading), reading]));
  const blocks: SameBlock[] = [];
  let block: [BenchReading, BenchReading][] = [];
  const close = (): void => {
    const rows = trimmed(block);
    block = [];
    const telling = rows.filter(([one]) => isTelling(one, a.session) && isTelling(one, b.session));
    if (telling.length < leastRows) return;
    const chance = telling.reduce(
      (product, [{ voltsRms }]) => product * Math.max(...chances.map((of) => of(voltsRms))),
      1,
    );
    blocks.push({
      a: rows.map(([one]) => one),
      b: rows.map(([, other]) => other),
      telling: telling.length,
      chance,
    });
  };
  for (const reading of a.readings) {
    const other = there.get(keyOf(reading));
    if (other?.voltsRms === reading.voltsRms) block.push([reading, other]);
    else close();
  }
  close();
  return blocks;
}

/** Without the silent rows at both ends: those are the same in any two sheets. */
function trimmed(block: readonly [BenchReading, BenchReading][]): [BenchReading, BenchReading][] {
  const reads = ([{ voltsRms }]: readonly [BenchReading, BenchReading]): boolean => voltsRms > 0;
  const first = block.findIndex(reads);
  return first < 0 ? [] : block.slice(first, block.findLastIndex(reads) + 1);
}
