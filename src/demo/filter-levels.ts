/**
 * Levels in dB of analogue filters at a frequency.
 * Peaking and low shelf: analogue prototypes of the W3C Note "Audio EQ Cookbook" (2021).
 * High- and low-pass: Butterworth magnitude, any order.
 */

/** 20·log10 of |numerator|/|denominator|, each given as real and imaginary part. */
function ratioDb(numerator: readonly [number, number], denominator: readonly [number, number]): number {
  return 20 * Math.log10(Math.hypot(...numerator) / Math.hypot(...denominator));
}

/** Peaking filter of gainDb at centreHz: H(s) = (s² + s·A/Q + 1)/(s² + s/(A·Q) + 1), A = 10^(gain/40). */
export function peakDb(hz: number, centreHz: number, gainDb: number, q: number): number {
  const a = 10 ** (gainDb / 40);
  const w = hz / centreHz;
  return ratioDb([1 - w * w, (w * a) / q], [1 - w * w, w / (a * q)]);
}

/**
 * Low shelf of gainDb with its midpoint at middleHz:
 * H(s) = A·(s² + s·√A/Q + A)/(A·s² + s·√A/Q + 1), A = 10^(gain/40).
 */
export function lowShelfDb(hz: number, middleHz: number, gainDb: number, q: number): number {
  const a = 10 ** (gainDb / 40);
  const w = hz / middleHz;
  const damping = (w * Math.sqrt(a)) / q;
  return 20 * Math.log10(a) + ratioDb([a - w * w, damping], [1 - a * w * w, damping]);
}

/** Butterworth high-pass of the given order, −3.01 dB at cornerHz. */
export function highPassDb(hz: number, cornerHz: number, order: number): number {
  return -10 * Math.log10(1 + (cornerHz / hz) ** (2 * order));
}

/** Butterworth low-pass of the given order, −3.01 dB at cornerHz. */
export function lowPassDb(hz: number, cornerHz: number, order: number): number {
  return -10 * Math.log10(1 + (hz / cornerHz) ** (2 * order));
}
