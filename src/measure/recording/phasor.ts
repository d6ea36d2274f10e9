/** One frequency of a signal: the Fourier sum there, exactly, not at the nearest bin of a transform. */

/**
 * |Σ w[n]·x[from + n]·e^(−j2πfn/fs)|: the magnitude of a windowed stretch at one frequency. The stretch
 * may run over the ends of the array, which is taken as periodic (as an impulse response from an FFT is).
 */
export function magnitudeAt(
  samples: Float64Array,
  from: number,
  window: Float64Array,
  turns: number,
): number {
  const { re, im } = phasorAt(samples, from, window, turns);
  return Math.hypot(re, im);
}

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

/** Σ w[n]·x[from + n]·e^(−j2πn·turns), `turns` being the frequency over the sample rate. */
export function phasorAt(samples: Float64Array, from: number, window: Float64Array, turns: number): Phasor {
  const size = samples.length;
  let at = ((from % size) + size) % size;
  const stepCos = Math.cos(2 * Math.PI * turns);
  const stepSin = -Math.sin(2 * Math.PI * turns);
  let cos = 1;
  let sin = 0;
  let re = 0;
  let im = 0;
  for (let n = 0; n < window.length; n += 1) {
    const value = (window[n] ?? 0) * (samples[at] ?? 0);
    re += value * cos;
    im += value * sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
    at += 1;
    if (at === size) at = 0;
  }
  return { re, im };
}
