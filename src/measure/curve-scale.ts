/** The scales a curve is laid through on: levels themselves, or a function that makes a filter's curve simple. */

/**
 * What a curve is laid through: levels themselves, or a function of them that makes a filter's curve simple.
 *
 * On the flanks of a boost 1/(10^(L/10) − 1) is, for a peaking filter, linear in sinh²(ln(f/f₀)) and so nearly
 * a parabola (from the analogue prototype of the Audio EQ Cookbook, W3C Note 2021); it needs levels clearly
 * above 0 dB. Past a corner the logarithm of 10^(−L/10) − 1 is, for a Butterworth filter of any order, a
 * straight line over that of frequency (standard filter theory); it needs levels clearly below 0 dB.
 */
export interface Scale {
  readonly toLine: (levelDb: number) => number;
  readonly toLevel: (line: number) => number;
  /** d(line)/d(level). */
  readonly slope: (levelDb: number) => number;
}

export const plainScale: Scale = { toLine: (level) => level, toLevel: (line) => line, slope: () => 1 };

export const raisedScale: Scale = {
  toLine: (level) => -1 / (10 ** (level / 10) - 1),
  toLevel: (line) => 10 * Math.log10(1 - 1 / line),
  slope: (level) => ((Math.LN10 / 10) * 10 ** (level / 10)) / (10 ** (level / 10) - 1) ** 2,
};

export const fallenScale: Scale = {
  toLine: (level) => -Math.log2(10 ** (-level / 10) - 1),
  toLevel: (line) => -10 * Math.log10(1 + 2 ** -line),
  slope: (level) => ((Math.LN10 / 10) * 10 ** (-level / 10)) / (10 ** (-level / 10) - 1) / Math.LN2,
};

/** Levels at least this far above 1 kHz can be laid through on the raised scale, dB. */
const leastRaisedDb = 0.2;

/** Levels at least this far below 1 kHz can be laid through on the fallen scale, dB. */
export const leastFallenDb = -0.3;

export function scaleFor(levelsDb: readonly number[]): Scale {
  return levelsDb.every((level) => level > leastRaisedDb) ? raisedScale : plainScale;
}
