/** The curve of a set of filters at the frequencies of a response, and the numbers they are set by. */
import { type Filter, type FilterKind, prototypeDb, prototypeOf } from '../../../measure/index.ts';
import type { EqualiserLimits } from './limits.ts';
import { bentAt, type Grid } from './wrong.ts';

/** Qs of shelves and of a high-pass: from gentle to just short of ringing. */
const gentleQ = [0.4, 1] as const;

/** A setting within its limits: logarithm of frequency, gain, logarithm of Q. */
export type Setting = [lnHz: number, gainDb: number, lnQ: number];
type Bounds = readonly (readonly [least: number, most: number])[];

/** The limits of a kind's setting; a high-pass has no gain. */
export function boundsOf(kind: FilterKind, limits: EqualiserLimits): Bounds {
  const q = kind === 'peaking' ? limits.q : gentleQ;
  return [logs(limits.hz), kind === 'high-pass' ? [0, 0] : limits.gainDb, logs(q)];
}

function logs([least, most]: readonly [number, number]): readonly [number, number] {
  return [Math.log(least), Math.log(most)];
}

export function filterOf(kind: FilterKind, [lnHz, gainDb, lnQ]: Readonly<Setting>): Filter {
  return { kind, hz: Math.exp(lnHz), gainDb, q: Math.exp(lnQ) };
}

/** Level of a filter at each frequency, dB. */
export function curveDb(filter: Filter, { bent }: Grid): number[] {
  const prototype = prototypeOf(filter);
  const own = bentAt(filter.hz);
  return bent.map((place) => prototypeDb(prototype, place / own));
}

/** Level of all filters together at each frequency, dB. */
export function togetherDb(filters: readonly Filter[], grid: Grid): number[] {
  const sum = grid.frequencies.map(() => 0);
  for (const filter of filters) add(sum, curveDb(filter, grid));
  return sum;
}

/** Adds one curve to another in place. */
export function add(sum: number[], curve: readonly number[]): void {
  for (let index = 0; index < sum.length; index += 1) sum[index] = (sum[index] ?? 0) + (curve[index] ?? 0);
}
