/** Ratios to a fundamental, told with what noise may make of them. */

/** A ratio to the fundamental; at most that where it does not stand clear of the noise. */
export interface NoisyRatio {
  readonly ratio: number;
  readonly bound: 'exact' | 'at-most';
}

/** A reading stands clear of the noise from 10 dB: noise itself reaches that once in ten thousand readings. */
export const clearOfNoise = 3;

/** A ratio as read, or the bound that is all the noise allows: both relative to the fundamental. */
export function rated({ ratio, noise }: { readonly ratio: number; readonly noise: number }): NoisyRatio {
  return ratio >= clearOfNoise * noise
    ? { ratio, bound: 'exact' }
    : { ratio: Math.max(ratio, clearOfNoise * noise), bound: 'at-most' };
}
