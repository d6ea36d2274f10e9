/** The discrete Fourier transform of real signals, by the radix-4 FFT of `fft.js`. */
import FFT from 'fft.js';

/** What is used of `fft.js`, whose own declarations leave every argument untyped. */
interface ComplexTransform {
  transform(spectrum: Float64Array, samples: Float64Array): void;
  inverseTransform(samples: Float64Array, spectrum: Float64Array): void;
}
const ComplexTransform = FFT as unknown as new (size: number) => ComplexTransform;

/** Bins 0 to size/2 of the spectrum of a real signal, as real and imaginary parts in turn. */
export type Spectrum = Float64Array;

/**
 * Transforms of real signals of one size, a power of two from 4. Even and odd samples go through one complex
 * transform of half the size as its real and imaginary parts, and are told apart by their symmetry (Cooley,
 * Lewis and Welch, J. Sound Vib. 12:315, 1970). Making one costs as much as a transform, so keep it.
 */
export class RealTransform {
  readonly size: number;
  readonly #half: ComplexTransform;

  constructor(size: number) {
    this.size = size;
    this.#half = new ComplexTransform(size / 2);
  }

  /** X[k] = Σ x[n]·e^(−j2πkn/size), the signal padded with zeros or cut to the size. */
  forward(samples: Float64Array): Spectrum {
    const { size } = this;
    const pairs = new Float64Array(size);
    pairs.set(samples.subarray(0, size));
    const mixed = new Float64Array(size + 2);
    this.#half.transform(mixed.subarray(0, size), pairs);
    // The half-size spectrum is periodic: its bin size/2 is its bin 0.
    mixed[size] = mixed[0] ?? 0;
    mixed[size + 1] = mixed[1] ?? 0;
    return this.#separate(mixed, -1);
  }

  /** The real signal of a spectrum: x[n] = (1/size)·Σ X[k]·e^(j2πkn/size). Overwrites the spectrum. */
  inverse(spectrum: Spectrum): Float64Array {
    const { size } = this;
    const mixed = this.#separate(spectrum, 1);
    const samples = new Float64Array(size);
    this.#half.inverseTransform(samples, mixed.subarray(0, size));
    return samples;
  }

  /**
   * Between the half-size spectrum of the pairs and the spectrum of the signal, in place. With E and O the
   * spectra of even and odd samples and w = e^(−j2πk/size): forwards (−1) E + jO becomes E + w·O, and
   * backwards (+1) E + w·O becomes E + jO; both give E and O by the sum and difference with the mirrored
   * conjugate, Z[k] ± conj(Z[size/2 − k]).
   */
  #separate(bins: Float64Array, direction: -1 | 1): Float64Array {
    const { size } = this;
    for (let low = 0; low <= size / 2; low += 2) {
      const high = size - low;
      const lowRe = bins[low] ?? 0;
      const lowIm = bins[low + 1] ?? 0;
      const highRe = bins[high] ?? 0;
      const highIm = bins[high + 1] ?? 0;
      const evenRe = (lowRe + highRe) / 2;
      const evenIm = (lowIm - highIm) / 2;
      const differenceRe = (lowRe - highRe) / 2;
      const differenceIm = (lowIm + highIm) / 2;
      // Forwards the difference is jO and wanted as w·O: times −j·w. Backwards it is w·O, wanted as jO: times j/w.
      const angle = (Math.PI * low) / size;
      const factorRe = -Math.sin(angle);
      const factorIm = direction * Math.cos(angle);
      const oddRe = differenceRe * factorRe - differenceIm * factorIm;
      const oddIm = differenceRe * factorIm + differenceIm * factorRe;
      bins[low] = evenRe + oddRe;
      bins[low + 1] = evenIm + oddIm;
      bins[high] = evenRe - oddRe;
      bins[high + 1] = oddIm - evenIm;
    }
    return bins;
  }
}

/** The smallest power of two that is not below `length`, 4 at least. */
export function powerOfTwoAtLeast(length: number): number {
  let size = 4;
  while (size < length) size *= 2;
  return size;
}
