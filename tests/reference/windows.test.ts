/** Figures of windows: Harris, Proc. IEEE 66:51 (1978), as transcribed; recomputed independently. */
import { describe, expect, test } from 'vitest';
import {
  coherentGain,
  flatTop,
  hamming,
  hann,
  noiseBandwidthBins,
} from '../../src/measure/recording/index.ts';

const length = 4096;

describe('equivalent noise bandwidth, bins', () => {
  test.each([
    ['Hann', hann, 1.5],
    ['Hamming', hamming, 1987 / 1458],
    ['flat top', flatTop, 3.770246],
  ] as const)('%s', (_, window, expected) => {
    expect(noiseBandwidthBins(window(length))).toBeCloseTo(expected, 6);
  });
});

describe('coherent gain is the constant term of the cosine sum', () => {
  test.each([
    ['Hann', hann, 0.5],
    ['Hamming', hamming, 0.54],
    ['flat top', flatTop, 0.21557895],
  ] as const)('%s', (_, window, expected) => {
    expect(coherentGain(window(length))).toBeCloseTo(expected, 12);
  });
});

/** What a bin reads of a tone that lies `off` bins beside it, dB: the window's own Fourier sum. */
function lossDb(window: Float64Array, off: number): number {
  let re = 0;
  let im = 0;
  window.forEach((value, n) => {
    re += value * Math.cos((2 * Math.PI * off * n) / window.length);
    im += value * Math.sin((2 * Math.PI * off * n) / window.length);
  });
  return 20 * Math.log10(Math.hypot(re, im) / (window.length * coherentGain(window)));
}

describe('a tone half a bin off', () => {
  // Harris, table I: Hann 1.42 dB, Hamming 1.78 dB.
  test.each([
    ['Hann', hann, -1.42],
    ['Hamming', hamming, -1.78],
  ] as const)('%s loses what Harris gives', (_, window, expected) => {
    expect(lossDb(window(length), 0.5)).toBeCloseTo(expected, 1);
    expect(Math.abs(lossDb(window(length), 0.5) - expected)).toBeLessThan(0.03);
  });
  test('the flat top loses no more than 0.01 dB: what it is for', () => {
    expect(Math.abs(lossDb(flatTop(length), 0.5))).toBeLessThan(0.011);
  });
});
