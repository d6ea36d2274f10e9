/** Digital filters of the second order: the Cookbook's analogue prototypes by the bilinear transform. */
import { type Filter, prototypeOf } from './prototype.ts';

/** Coefficients with a0 = 1. */
export interface Biquad {
  readonly b: readonly [number, number, number];
  /** [1, a1, a2]. */
  readonly a: readonly [number, number, number];
}

/**
 * The coefficients of a filter at a sample rate: s = (1 − z⁻¹)/((1 + z⁻¹)·tan(ω0/2)), ω0 = 2π·f/rate
 * (W3C Note “Audio EQ Cookbook”, 2021). Its frequency must lie below half the rate.
 */
export function biquadOf(filter: Filter, sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * filter.hz) / sampleRateHz);
  const { numerator, denominator } = prototypeOf(filter);
  const [a0, a1, a2] = transformed(denominator, k);
  const [b0, b1, b2] = transformed(numerator, k);
  return { b: [b0 / a0, b1 / a0, b2 / a0], a: [1, a1 / a0, a2 / a0] };
}

function transformed(
  [two, one, zero]: readonly [number, number, number],
  k: number,
): [number, number, number] {
  const [square, middle] = [zero * k * k, one * k];
  return [two + middle + square, 2 * (square - two), two - middle + square];
}

/**
 * Where on its prototype a digital filter at `filterHz` is at `hz`: the bilinear transform bends frequencies to
 * tan(ω/2)/tan(ω0/2).
 */
export function bentRatio(hz: number, filterHz: number, sampleRateHz: number): number {
  return Math.tan((Math.PI * hz) / sampleRateHz) / Math.tan((Math.PI * filterHz) / sampleRateHz);
}

/** Level of a biquad at a frequency, dB: |B(z)|/|A(z)| on the unit circle. */
export function biquadDb({ b, a }: Biquad, hz: number, sampleRateHz: number): number {
  return 10 * Math.log10(squareAt(b, hz / sampleRateHz) / squareAt(a, hz / sampleRateHz));
}

/**
 * |c0 + c1·z⁻¹ + c2·z⁻²|² by φ = sin²(ω/2): (c0 + c1 + c2)² − 4·(c0·c1 + 4·c0·c2 + c1·c2)·φ + 16·c0·c2·φ², which
 * keeps its digits far below the sample rate.
 */
function squareAt([c0, c1, c2]: readonly [number, number, number], cycles: number): number {
  const phi = Math.sin(Math.PI * cycles) ** 2;
  return (c0 + c1 + c2) ** 2 - 4 * (c0 * c1 + 4 * c0 * c2 + c1 * c2) * phi + 16 * c0 * c2 * phi * phi;
}
