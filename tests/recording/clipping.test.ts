import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findClipping } from '../../src/measure/recording/index.ts';
import { clipAt, placedSweep, sweepOf, toneOf, withNoise } from './signals.ts';

const quantised = (samples: Float64Array, bits: number): Float64Array =>
  samples.map((sample) =>
    Math.max(-1, Math.min(1 - 2 ** (1 - bits), Math.round(sample * 2 ** (bits - 1)) / 2 ** (bits - 1))),
  );

describe('clipped', () => {
  const loud = toneOf(200, { seconds: 0.5, amplitude: 1.2 });
  test.each([
    ['at full scale, 16 bits', quantised(loud, 16)],
    ['at full scale, 24 bits', quantised(loud, 24)],
    ['turned down afterwards', clipAt(loud, 1).map((sample) => 0.3 * sample)],
    ['on one side only', loud.map((sample) => Math.min(0.9, sample))],
    ['by a hundredth', quantised(toneOf(200, { seconds: 0.5, amplitude: 1.01 }), 16)],
    [
      'softly at full scale, with noise',
      withNoise(
        loud.map((sample) => 0.99 * Math.tanh(3 * sample)),
        2e-4,
      ),
    ],
    ['a sweep', quantised(placedSweep(sweepOf(20, 20_000, 2), { amplitude: 1.1 }), 24)],
    [
      'a sweep at 44.1 kHz',
      quantised(placedSweep(sweepOf(20, 20_000, 2), { amplitude: 1.1, sampleRateHz: 44_100 }), 16),
    ],
  ])('%s', (_, samples) => {
    const found = findClipping(samples);
    expect(found.clipped).toBe(true);
    expect(found.flatTops).toBeGreaterThan(5);
  });
});

describe('not clipped', () => {
  test.each([
    ['a full-scale sine', toneOf(1000, { amplitude: 1 })],
    ['a full-scale sine, 16 bits', quantised(toneOf(1000, { amplitude: 0.99996 }), 16)],
    ['a low note, whose tops are long runs of one code', quantised(toneOf(20, { amplitude: 0.5 }), 16)],
    ['a very quiet low note', quantised(toneOf(20, { amplitude: 0.001 }), 16)],
    ['a sweep', quantised(placedSweep(sweepOf(20, 20_000, 2), { amplitude: 0.9 }), 16)],
    [
      'a unit that clips well below full scale, with the noise of any recording',
      withNoise(clipAt(toneOf(200), 0.4), 1e-5),
    ],
    ['silence', new Float64Array(1000)],
    ['a constant', new Float64Array(1000).fill(0.5)],
  ])('%s', (_, samples) => {
    expect(findClipping(samples).clipped).toBe(false);
  });
  test('no sine of any frequency, level, phase or number of bits is', () => {
    const hz = fc.double({ min: 10, max: 23_000, noNaN: true });
    const amplitude = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    const bits = fc.constantFrom(16, 24, 32);
    fc.assert(
      fc.property(hz, amplitude, bits, (f, a, b) => {
        const samples = toneOf(f, { seconds: 0.3, amplitude: a });
        expect(findClipping(quantised(samples, b)).clipped).toBe(false);
      }),
      { numRuns: 150 },
    );
  });
});
