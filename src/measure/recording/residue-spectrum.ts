/** What is left of a tone's recording beside the fundamental, over frequency. */
import { RealTransform } from './fft.ts';
import { powersOf } from './recognise.ts';
import { hann, sumOfSquares } from './windows.ts';

/** Bins each side of the fundamental that belong to it: what drifts slowly is no noise. */
const ownBins = 10;

/** What is left beside the fundamental, as power over frequency (Hann window). */
export class ResidueSpectrum {
  readonly #binHz: number;
  /** Mean square in each bin, so that sums over bins are mean squares. */
  readonly #power: Float64Array;

  constructor(residue: Float64Array, sampleRateHz: number) {
    const window = hann(residue.length);
    const windowed = residue.map((value, n) => value * (window[n] ?? 0));
    const size = residue.length;
    // One-sided: 2·|X|²/(N·Σw²), which is 2·|X|²/(Σw)² over the window's noise bandwidth in bins.
    const scale = 2 / (size * sumOfSquares(window));
    this.#binHz = sampleRateHz / size;
    this.#power = powersOf(new RealTransform(size).forward(windowed)).map((power) => power * scale);
  }

  /** The mean square within a band but for the fundamental's own bins. */
  powerWithin([fromHz, toHz]: readonly [number, number], fundamentalHz: number): number {
    const own = fundamentalHz / this.#binHz;
    let power = 0;
    const last = Math.min(this.#power.length - 1, Math.floor(toHz / this.#binHz));
    for (let k = Math.ceil(fromHz / this.#binHz); k <= last; k += 1) {
      if (Math.abs(k - own) > ownBins) power += this.#power[k] ?? 0;
    }
    return power;
  }

  /** The density of the noise about a frequency, mean square per hertz, by the median of bins beside its lobe. */
  densityNear(hz: number): number {
    const at = Math.round(hz / this.#binHz);
    const beside: number[] = [];
    for (let away = 4; away <= 11; away += 1) {
      for (const k of [at - away, at + away])
        if (k > 0 && k < this.#power.length) beside.push(this.#power[k] ?? 0);
    }
    const sorted = beside.sort((a, b) => a - b);
    return (sorted[sorted.length >> 1] ?? 0) / Math.LN2 / this.#binHz;
  }
}
