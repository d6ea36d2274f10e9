/** Window functions and their figures (Harris, Proc. IEEE 66:51, 1978). */

/** The coefficients a_k of a cosine-sum window: w[n] = Σ (−1)^k·a_k·cos(2πkn/N). */
type CosineSum = readonly number[];

const hannTerms: CosineSum = [0.5, 0.5];
const hammingTerms: CosineSum = [0.54, 0.46];
/** The five-term flat top of common spectrum analysers: reads a tone between two bins right to 0.01 dB. */
const flatTopTerms: CosineSum = [0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368];

/** Hann window of N samples, periodic: good at telling noise from tones. */
export function hann(length: number): Float64Array {
  return cosineSum(hannTerms, length);
}

/** Hamming window of N samples, periodic. */
export function hamming(length: number): Float64Array {
  return cosineSum(hammingTerms, length);
}

/** Flat-top window of N samples, periodic: good at reading the level of tones. */
export function flatTop(length: number): Float64Array {
  return cosineSum(flatTopTerms, length);
}

function cosineSum(terms: CosineSum, length: number): Float64Array {
  const window = new Float64Array(length);
  for (let n = 0; n < length; n += 1) {
    let value = 0;
    for (let k = 0; k < terms.length; k += 1) {
      value += (k % 2 === 0 ? 1 : -1) * (terms[k] ?? 0) * Math.cos((2 * Math.PI * k * n) / length);
    }
    window[n] = value;
  }
  return window;
}

/** Coherent gain, Σw/N: what a window leaves of a tone's amplitude. */
export function coherentGain(window: Float64Array): number {
  return sum(window) / window.length;
}

/** Equivalent noise bandwidth in bins, N·Σw²/(Σw)²: how much more noise than a bin a reading takes in. */
export function noiseBandwidthBins(window: Float64Array): number {
  return (window.length * sumOfSquares(window)) / sum(window) ** 2;
}

/** The share of each side of a gate that is flat. */
const gateFlat = 0.25;

/**
 * A gate around an instant, for cutting a part out of an impulse response: flat in the middle, the rest of
 * each side falling to zero as half a Hann window. `before` samples, the instant, `after` samples.
 */
export function gate(before: number, after: number): Float64Array {
  const window = new Float64Array(before + 1 + after).fill(1);
  const fall = (at: number, side: number): number => {
    const outward = Math.max(0, (at / (side + 1) - gateFlat) / (1 - gateFlat));
    return 0.5 + 0.5 * Math.cos(Math.PI * outward);
  };
  for (let n = 1; n <= before; n += 1) window[before - n] = fall(n, before);
  for (let n = 1; n <= after; n += 1) window[before + n] = fall(n, after);
  return window;
}

export function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

export function sumOfSquares(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value * value;
  return total;
}
