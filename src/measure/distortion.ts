/** Total harmonic distortion and the ideal hard clip it is judged by. */

/** Distortion above this is not clean: the amplifier rating condition of CTA-2006, 1 % THD+N. */
export const cleanThdPercent = 1;

/** Compression that stands for the clean limit where no THD was read: 0.3 dB (AES17, maximum level). */
export const cleanCompressionDb = 0.3;

/**
 * THD relative to the fundamental (THD_F), as a ratio, from the amplitudes of fundamental and harmonics
 * (IEC 60268-3, 14.12). Amplitudes may be in any one unit, peak or rms.
 */
export function thdOfFundamental(fundamental: number, harmonics: readonly number[]): number {
  return Math.hypot(...harmonics) / fundamental;
}

/** THD relative to the total rms (THD_R), as a ratio (IEC 60268-3, 14.12). */
export function thdOfTotal(fundamental: number, harmonics: readonly number[]): number {
  return Math.hypot(...harmonics) / Math.hypot(fundamental, ...harmonics);
}

/**
 * THD_F of a sine clipped symmetrically at `limit` times its amplitude, as a ratio; 0 where limit ≥ 1.
 * The fundamental follows from the Fourier integral, the harmonics from the total power that is left.
 */
export function hardClipThd(limit: number): number {
  if (limit >= 1) return 0;
  const angle = Math.asin(limit);
  const fundamental = (2 / Math.PI) * (angle + limit * Math.sqrt(1 - limit ** 2));
  const harmonics = Math.max(0, clippedMeanSquare(limit) - fundamental ** 2 / 2);
  return Math.sqrt(harmonics / (fundamental ** 2 / 2));
}

/** Mean square of a sine of amplitude 1 clipped at `limit` < 1, from the integral over a quarter period. */
function clippedMeanSquare(limit: number): number {
  const angle = Math.asin(limit);
  return (2 / Math.PI) * (angle / 2 - Math.sin(2 * angle) / 4 + limit ** 2 * (Math.PI / 2 - angle));
}

/**
 * The rms of a hard-clipped sine relative to the rail it is clipped at: 1/√2 while it just touches,
 * towards 1 as it becomes a square wave.
 */
export function hardClipRmsToRail(limit: number): number {
  if (limit >= 1) return Math.SQRT1_2;
  return Math.sqrt(clippedMeanSquare(limit)) / limit;
}

/** The overdrive, dB above the onset, at which an ideal hard clip of a sine reaches a THD_F (a ratio). */
export function hardClipOverdriveDb(thd: number): number {
  let low = 0;
  let high = 120;
  // 120 dB halved 45 times is less than 1e-11 dB.
  for (let step = 0; step < 45; step += 1) {
    const middle = (low + high) / 2;
    if (hardClipThd(10 ** (-middle / 20)) < thd) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
