import { expect, test } from 'vitest';
import { powerOfTwoAtLeast, RealTransform } from '../../src/measure/recording/fft.ts';
import { withNoise } from './signals.ts';

test.each([4, 8, 64, 128, 512])('size %s: the sum that defines the transform, and back', (size) => {
  const samples = withNoise(new Float64Array(size), 1, size);
  const transform = new RealTransform(size);
  const spectrum = transform.forward(samples);
  expect(spectrum).toHaveLength(size + 2);
  for (let k = 0; k <= size / 2; k += 1) {
    let re = 0;
    let im = 0;
    samples.forEach((sample, n) => {
      re += sample * Math.cos((2 * Math.PI * k * n) / size);
      im -= sample * Math.sin((2 * Math.PI * k * n) / size);
    });
    expect(spectrum[2 * k]).toBeCloseTo(re, 9);
    expect(spectrum[2 * k + 1]).toBeCloseTo(im, 9);
  }
  transform.inverse(spectrum).forEach((sample, n) => {
    expect(sample).toBeCloseTo(samples[n] ?? 0, 12);
  });
});

test('short signals are padded, long ones cut', () => {
  const transform = new RealTransform(8);
  expect(
    [...transform.inverse(transform.forward(Float64Array.of(1, 2, 3)))].map((x) => Math.round(x) + 0),
  ).toEqual([1, 2, 3, 0, 0, 0, 0, 0]);
  expect(transform.forward(new Float64Array(20).fill(1))[0]).toBe(8);
});

test.each([
  [1, 4],
  [4, 4],
  [5, 8],
  [1025, 2048],
])('a power of two for %s samples: %s', (length, size) => {
  expect(powerOfTwoAtLeast(length)).toBe(size);
});
