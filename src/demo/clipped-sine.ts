/** What ideal symmetric hard clipping does to a sine: its rms value and its harmonics. */

/** A sine after clipping. */
export interface ClippedSine {
  /** Root mean square of the whole clipped wave, in the unit of the amplitude given. */
  readonly rms: number;
  /** Total harmonic distortion as a ratio to the fundamental (THD_F), not per cent. */
  readonly thdRatio: number;
}

/**
 * Clips a sine of the given peak amplitude at ±limit. Both must be positive and in the same unit.
 *
 * With θ = arcsin(limit/amplitude), integrating over a quarter period:
 *   mean square  = (2/π)·[A²(θ/2 − sin 2θ/4) + C²(π/2 − θ)]
 *   fundamental  = (4/π)·[A(θ/2 − sin 2θ/4) + C·cos θ]   (first Fourier coefficient, peak)
 * and by Parseval's theorem everything that is not fundamental is harmonics.
 */
export function clipSine(amplitude: number, limit: number): ClippedSine {
  if (amplitude <= limit) return { rms: amplitude / Math.SQRT2, thdRatio: 0 };
  const theta = Math.asin(limit / amplitude);
  const lobe = theta / 2 - Math.sin(2 * theta) / 4;
  const meanSquare = (2 / Math.PI) * (amplitude ** 2 * lobe + limit ** 2 * (Math.PI / 2 - theta));
  const fundamental = (4 / Math.PI) * (amplitude * lobe + limit * Math.cos(theta));
  const fundamentalSquare = fundamental ** 2 / 2;
  // Rounding can leave a difference just below zero where the clipping is slight.
  const harmonicsSquare = Math.max(0, meanSquare - fundamentalSquare);
  return { rms: Math.sqrt(meanSquare), thdRatio: Math.sqrt(harmonicsSquare / fundamentalSquare) };
}
