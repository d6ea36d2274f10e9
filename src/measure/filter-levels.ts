/**
 * Levels in dB of analogue filters at a frequency.
 * Peaking and low shelf: analogue prototypes of the W3C Note "Audio EQ Cookbook" (2021).
 * High- and low-pass: Butterworth magnitude, any order.
 */

import { prototypeDb, prototypeOf } from './prototype.ts';

/** Peaking filter of gainDb at centreHz. */
export function peakDb(hz: number, centreHz: number, gainDb: number, q: number): number {
  return prototypeDb(prototypeOf({ kind: 'peaking', gainDb, q }), hz / centreHz);
}

/** Low shelf of gainDb with its midpoint at middleHz. */
export function lowShelfDb(hz: number, middleHz: number, gainDb: number, q: number): number {
  return prototypeDb(prototypeOf({ kind: 'low-shelf', gainDb, q }), hz / middleHz);
}

/** Butterworth high-pass of the given order, −3.01 dB at cornerHz. */
export function highPassDb(hz: number, cornerHz: number, order: number): number {
  return -10 * Math.log10(1 + (cornerHz / hz) ** (2 * order));
}

/** Butterworth low-pass of the given order, −3.01 dB at cornerHz. */
export function lowPassDb(hz: number, cornerHz: number, order: number): number {
  return -10 * Math.log10(1 + (hz / cornerHz) ** (2 * order));
}
