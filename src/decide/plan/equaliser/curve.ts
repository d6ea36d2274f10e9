/** The curve of a set of filters at the frequencies of a response, and the numbers they are set by. */
import { bentRatio, type Filter, type FilterKind, prototypeDb, prototypeOf } from '../../../measure/index.ts';
import type { EqualiserLimits } from './limits.ts';

/** Equalisers mostly run at this rate, hertz: common practice, no source. It matters in the top octave only. */
export const sampleRateHz = 48_000;

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

/** Frequencies at which curves are wanted, bent as the bilinear transform bends them: once, not for every filter. */
export interface Grid {
  readonly frequencies: readonly number[];
  readonly bent: readonly number[];
}

/** What is wrong at each frequency: how far the response is above the target, dB. Plain data, to be sent to a worker. */
export interface Wrong {
  readonly grid: Grid;
  readonly errorDb: readonly number[];
}

export function gridOf(frequencies: readonly number[]): Grid {
  return { frequencies, bent: frequencies.map((hz) => bentRatio(hz, sampleRateHz / 4, sampleRateHz)) };
}

/** Level of a filter at each frequency, dB. */
export function curveDb(filter: Filter, { bent }: Grid): number[] {
  const prototype = prototypeOf(filter);
  const own = bentRatio(filter.hz, sampleRateHz / 4, sampleRateHz);
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

/** Without its mean: the overall level is set by the volume, not by filters. */
export function levelled(values: readonly number[]): number[] {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return values.map((one) => one - mean);
}
