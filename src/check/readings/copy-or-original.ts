/** Which of two sheets that hold the same rows has them from the other. */
import type { Base, BenchReading } from '../../base/index.ts';
import { areAlike, dbv } from '../../measure/index.ts';
import { type Cell, cellKey, ProfileSheet } from './cells.ts';
import type { Rows } from './copied-blocks.ts';
import { agree } from './sheet-pairs.ts';
import { sheetsOfProfile } from './sheets.ts';
import { unevennessDb } from './slip.ts';

/** What shows which of the two is the copy. */
export type CopySign = 'sessions' | 'neighbours' | 'order';

/**
 * Whether the second of two sheets has the rows from the first: other sessions of either profile tell, or how the
 * rows fit those beside them; where nothing tells, the newer session, or the lower rows of a sheet.
 */
export function secondIsCopy(
  base: Base,
  [a, b]: readonly [Rows, Rows],
  rows: readonly BenchReading[],
): { readonly isCopy: boolean; readonly sign: CopySign } {
  const keys = new Set(rows.map(({ channel, step, hz }) => cellKey(channel, step, hz)));
  const [first, second] = [a, b].map((one) => new ProfileSheet(one.profile, one.session, one.readings));
  if (!first || !second) throw new Error('no sheets to compare');
  const [firstBacked, secondBacked] = [backing(base, first, keys), backing(base, second, keys)];
  if (Math.abs(firstBacked - secondBacked) > tellingBacking) {
    return { isCopy: firstBacked > secondBacked, sign: 'sessions' };
  }
  // Rows beside the block that only one of them has would speak against that one alone.
  const [firstJumps, secondJumps] = [
    jumpsDb(commonCells(first, second), keys),
    jumpsDb(commonCells(second, first), keys),
  ];
  if (Math.abs(firstJumps - secondJumps) > tellingJumpsDb) {
    return { isCopy: secondJumps > firstJumps, sign: 'neighbours' };
  }
  const isLater = (one: Rows, other: Rows): boolean =>
    one.session === other.session
      ? lineOf(one.readings[0]) > lineOf(other.readings[0])
      : one.session.data.date >= other.session.data.date;
  return { isCopy: isLater(b, a), sign: 'order' };
}

const tellingBacking = 0.5;
const tellingJumpsDb = 0.5;

/** How far other sessions of the profile bear the rows out: 1 in all, -1 in none, 0 where none tells. */
function backing(base: Base, sheet: ProfileSheet, keys: ReadonlySet<number>): number {
  const told = sheetsOfProfile(base, sheet.profile)
    .filter(({ session }) => session !== sheet.session && areAlike(session.data, sheet.session.data))
    .flatMap((other) =>
      sheet.cells.flatMap((cell) => {
        const there = keys.has(cell.key) ? other.byKey.get(cell.key) : undefined;
        return (there && agree(cell, sheet, there, other)) ?? [];
      }),
    );
  return told.reduce((sum, fits) => sum + (fits ? 1 : -1), 0) / Math.max(1, told.length);
}

/** A sheet with only the cells that another has too. */
function commonCells(sheet: ProfileSheet, other: ProfileSheet): ProfileSheet {
  const cells = sheet.cells.filter(({ key }) => other.byKey.has(key));
  return new ProfileSheet(
    sheet.profile,
    sheet.session,
    cells.flatMap(({ readings }) => readings),
  );
}

/** How far rows jump from those beside them that were not copied: along steps, along frequency, left to right. */
function jumpsDb(sheet: ProfileSheet, keys: ReadonlySet<number>): number {
  const copied = new Set(sheet.cells.filter(({ key, volts }) => keys.has(key) && volts > 0));
  const along = unevennessDb([...sheet.series, ...sheet.curves], copied);
  const across = [...copied].reduce((sum, cell) => {
    const other = sheet.byKey.get(cellKey(otherSide(cell), cell.step, cell.hz));
    const tells = other && !keys.has(other.key) && other.volts > 0;
    return tells ? sum + Math.abs(dbv(cell.volts / other.volts)) : sum;
  }, 0);
  return along + across;
}

function otherSide({ channel }: Cell): Cell['channel'] {
  return ({ FL: 'FR', FR: 'FL', RL: 'RR', RR: 'RL' } as const)[channel];
}

function lineOf(reading: BenchReading | undefined): number {
  return reading ? Number(reading.id.slice(reading.id.lastIndexOf(':') + 1)) : 0;
}
