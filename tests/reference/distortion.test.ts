import { describe, expect, test } from 'vitest';
import {
  hardClipOverdriveDb,
  hardClipRmsToRail,
  hardClipThd,
  thdOfFundamental,
  thdOfTotal,
} from '../../src/measure/index.ts';

describe('total harmonic distortion (IEC 60268-3, 14.12, as transcribed)', () => {
  const harmonics = [0.1, 0.05, 0.02];
  test('relative to the fundamental', () => {
    expect(thdOfFundamental(1, harmonics)).toBeCloseTo(0.11357816691600547, 15);
  });
  test('relative to the whole', () => {
    expect(thdOfTotal(1, harmonics)).toBeCloseTo(0.11285260010027609, 15);
  });
});

describe('an ideal symmetric hard clip of a sine (derived; recomputed independently)', () => {
  test.each([
    [0.001, 0.03668, 5],
    [0.01, 0.2512607, 7],
    [0.03, 0.66568, 5],
    [0.1, 2.1731413, 7],
  ])('THD %s is reached %s dB above the onset', (thd, overdriveDb, digits) => {
    expect(hardClipOverdriveDb(thd)).toBeCloseTo(overdriveDb, digits);
  });
  test('driven without end it is a square wave: THD_F = 0.4834258476, rms = the rail', () => {
    expect(hardClipThd(1e-8)).toBeCloseTo(0.4834258476, 7);
    expect(hardClipRmsToRail(1e-8)).toBeCloseTo(1, 5);
  });
  test('below the onset it is a sine: no harmonics, rms = rail/√2 at most', () => {
    expect(hardClipThd(1)).toBe(0);
    expect(hardClipRmsToRail(1)).toBe(Math.SQRT1_2);
    expect(hardClipRmsToRail(0.999999)).toBeCloseTo(Math.SQRT1_2, 5);
  });
  test('agrees with a Fourier sum over the sampled waveform', () => {
    const limit = 0.8;
    const samples = 4096;
    const wave = Array.from({ length: samples }, (_, n) =>
      Math.max(-limit, Math.min(limit, Math.sin((2 * Math.PI * n) / samples))),
    );
    const amplitude = (order: number): number =>
      (2 / samples) *
      wave.reduce((sum, value, n) => sum + value * Math.sin((2 * Math.PI * order * n) / samples), 0);
    const odd = Array.from({ length: 200 }, (_, i) => amplitude(2 * i + 3));
    expect(thdOfFundamental(amplitude(1), odd)).toBeCloseTo(hardClipThd(limit), 5);
  });
});
