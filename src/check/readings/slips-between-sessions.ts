/** Slips of unit told by another session that measured the same profile under like conditions. */
import type { Family } from '../../../schemas/index.ts';
import { areAlike } from '../../measure/index.ts';
import { type Cell, type ProfileSheet, toleranceOf } from './cells.ts';
import { unevennessDb } from './slip.ts';
import {
  inverseOf,
  misfitOf,
  type SlipKind,
  slipsBetween,
  type ToleranceAt,
  widestFor,
  widestTolerance,
} from './slip-kinds.ts';
import { voltsLimit } from './volts-limit.ts';

/** Cells of one sheet that are a slip of unit off those of another. */
export interface Suspicion {
  readonly here: ProfileSheet;
  readonly there: ProfileSheet;
  readonly kind: SlipKind;
  /** Each with the cell it is held against. */
  readonly pairs: readonly CellPair[];
  /** The same seen the other way round, where nothing but custom tells which sheet is at fault. */
  readonly otherwise: Suspicion | undefined;
}

export type CellPair = readonly [here: Cell, there: Cell];

export interface SessionComparison {
  readonly suspicions: readonly Suspicion[];
  /** Cells that agree with those of another session: nothing beside them makes them suspect. */
  readonly confirmed: ReadonlySet<Cell>;
}

/** Compares the sheets of one profile pair by pair. */
export function compareSessions(
  sheets: readonly ProfileSheet[],
  topology: Family['output']['topology'],
): SessionComparison {
  const confirmed = new Set<Cell>();
  const suspicions: Suspicion[] = [];
  sheets.forEach((a, index) => {
    for (const b of sheets.slice(index + 1)) {
      if (!areAlike(a.session.data, b.session.data)) continue;
      for (const one of apartBySlip(a, b, confirmed)) suspicions.push(blamed(one, sheets, topology));
    }
  });
  return { suspicions, confirmed };
}

/** What two sheets are apart by, for each slip, blamed on either as it comes. */
function apartBySlip(a: ProfileSheet, b: ProfileSheet, confirmed: Set<Cell>): Suspicion[] {
  const apart: CellPair[] = [];
  for (const ofA of a.cells) {
    const ofB = b.byKey.get(ofA.key);
    if (!ofB || ofA.volts === 0 || ofB.volts === 0) continue;
    const tolerance = toleranceOf(ofA, a, 'others') + toleranceOf(ofB, b, 'others');
    if (Math.abs(Math.log(ofA.volts / ofB.volts)) > tolerance) apart.push([ofA, ofB]);
    else if (tolerance <= widestTolerance) confirmed.add(ofA).add(ofB);
  }
  if (apart.length === 0) return [];
  const turned = apart.map(([ofA, ofB]): CellPair => [ofB, ofA]);
  const fits = [...fitsOf(a, b, apart), ...fitsOf(b, a, turned)];
  return settled(fits);
}

interface Fit extends Suspicion {
  readonly pairs: CellPair[];
}

/** For each slip the pairs it explains; a pair may be explained by several. */
function fitsOf(here: ProfileSheet, there: ProfileSheet, apart: readonly CellPair[]): Fit[] {
  const fits = new Map<SlipKind, Fit>();
  for (const pair of apart) {
    for (const kind of slipsBetween(pair[0].volts, pair[1].volts, toleranceBetween(pair, here, there))) {
      const known = fits.get(kind);
      if (known) known.pairs.push(pair);
      else fits.set(kind, { here, there, kind, pairs: [pair], otherwise: undefined });
    }
  }
  // Where a slip is certain, readings too small to show it by themselves go with it.
  for (const { kind, pairs } of fits.values()) {
    if (pairs.length < leastCertain) continue;
    for (const pair of apart) {
      const misfit = misfitOf(kind, pair[0].volts, pair[1].volts);
      const most = toleranceBetween(pair, here, there)(kind.meant(pair[0].volts));
      if (!pairs.includes(pair) && misfit <= most && most > widestFor(kind) && most < widestAtAll)
        pairs.push(pair);
    }
  }
  return [...fits.values()];
}

/** So many rows that are off by one slip leave no doubt that it is one. */
const leastCertain = 2;

/** Beyond this tolerance a reading is the last digit and says nothing. */
const widestAtAll = 0.5;

function toleranceBetween([ofHere, ofThere]: CellPair, here: ProfileSheet, there: ProfileSheet): ToleranceAt {
  const ofOther = toleranceOf(ofThere, there, 'others');
  return (volts) => ofOther + toleranceOf(ofHere, here, 'others', volts);
}

/** Gives each cell to one slip: the one that explains most first. */
function settled(fits: readonly Fit[]): Fit[] {
  const taken = new Set<Cell>();
  const kept: Fit[] = [];
  let left = [...fits];
  while (left.length > 0) {
    const best = left.reduce((most, one) => (one.pairs.length > most.pairs.length ? one : most));
    kept.push(best);
    for (const [ofHere, ofThere] of best.pairs) taken.add(ofHere).add(ofThere);
    left = left
      .filter((one) => one !== best)
      .map((one) => ({ ...one, pairs: one.pairs.filter(([cell]) => !taken.has(cell)) }))
      .filter(({ pairs }) => pairs.length > 0);
  }
  // Rows in the order of the sheet.
  return kept.map((fit) => ({ ...fit, pairs: [...fit.pairs].sort(([x], [y]) => lineOf(x) - lineOf(y)) }));
}

function lineOf(cell: Cell): number {
  const id = cell.readings[0]?.id ?? '';
  return Number(id.slice(id.lastIndexOf(':') + 1));
}

/**
 * Decibels that fit a number or two within what two benches may be apart may be chance, as a factor hardly is:
 * so few have to fit closely.
 */
export function isStriking({ kind, pairs }: Pick<Suspicion, 'kind' | 'pairs'>): boolean {
  const isClose = ([here, there]: CellPair): boolean =>
    Math.abs(here.volts - kind.written(there.volts)) <= closeDecibels;
  return kind.factor !== undefined || pairs.length > 2 || pairs.every(isClose);
}

/** Common practice, no source. */
const closeDecibels = 0.12;

/** Puts the blame where votes, evenness or physics put it; else on the likelier slip, to be seen otherwise. */
function blamed(
  suspicion: Suspicion,
  sheets: readonly ProfileSheet[],
  topology: Family['output']['topology'],
): Suspicion {
  const inverse = inverseOf(suspicion.kind);
  // Decibels for volts go one way only.
  if (!inverse) return suspicion;
  const turned: Suspicion = {
    here: suspicion.there,
    there: suspicion.here,
    kind: inverse,
    pairs: suspicion.pairs.map(([here, there]) => [there, here]),
    otherwise: undefined,
  };
  const told =
    votes(suspicion, sheets) ||
    mended(suspicion) - mended(turned) ||
    Number(isImpossible(suspicion, topology)) - Number(isImpossible(turned, topology));
  if (Math.abs(told) > 0) return told > 0 ? suspicion : turned;
  const usual = isUsual(suspicion) ? suspicion : turned;
  return { ...usual, otherwise: usual === suspicion ? turned : suspicion };
}

/** How many cells of third sessions side with `there`, less those that side with `here`. */
function votes({ here, there, pairs }: Suspicion, sheets: readonly ProfileSheet[]): number {
  let sum = 0;
  for (const third of sheets) {
    if (third === here || third === there || !areAlike(third.session.data, here.session.data)) continue;
    for (const [ofHere, ofThere] of pairs) {
      const cell = third.byKey.get(ofHere.key);
      if (!cell || cell.volts === 0) continue;
      const agrees = (other: Cell, sheet: ProfileSheet): boolean =>
        Math.abs(Math.log(cell.volts / other.volts)) <=
        toleranceOf(cell, third, 'others') + toleranceOf(other, sheet, 'others');
      sum += Number(agrees(ofThere, there)) - Number(agrees(ofHere, here));
    }
  }
  return sum;
}

/** How much evener the suspected sheet becomes when the slip is undone, dB; less than 1 dB is nothing. */
function mended({ here, pairs, kind }: Suspicion): number {
  const changed = new Set(pairs.map(([cell]) => cell));
  const lines = [...here.series, ...here.curves];
  const gain = unevennessDb(lines, changed) - unevennessDb(lines, changed, kind);
  return Math.abs(gain) < 1 ? 0 : gain;
}

/** Whether any suspected cell is over what its output can give. */
function isImpossible({ here, pairs }: Suspicion, topology: Family['output']['topology']): boolean {
  return pairs.some(([cell]) => cell.volts > 1.02 * voltsLimit(cell, here.session.data, topology).volts);
}

/**
 * Whether the slip is the usual one of the two: peak for rms is, rms divided once too often is not. Of a
 * thousand to one the little is wrong: the much would have been found to be impossible.
 */
function isUsual({ kind }: Suspicion): boolean {
  return kind.id === 'thousandth' || (kind.id !== 'millivolts' && (kind.factor ?? 1) > 1);
}
