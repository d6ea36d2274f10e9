import { describe, expect, it } from 'vitest';
import { clipSine } from '../../src/demo/clipped-sine.ts';

/** The same wave summed sample by sample, with no closed form. */
function sampled(amplitude: number, limit: number) {
  const samples = 200_000;
  let [square, sine] = [0, 0];
  for (let i = 0; i < samples; i += 1) {
    const phase = (2 * Math.PI * (i + 0.5)) / samples;
    const value = Math.min(limit, Math.max(-limit, amplitude * Math.sin(phase)));
    square += value * value;
    sine += value * Math.sin(phase);
  }
  const fundamentalSquare = ((2 * sine) / samples) ** 2 / 2;
  return { rms: Math.sqrt(square / samples), thd: Math.sqrt(square / samples / fundamentalSquare - 1) };
}

describe('a clipped sine', () => {
  // Fourier series of an ideally, symmetrically clipped sine, solved for THD_F with an independent program.
  it.each([
    [0.03668, 0.001],
    [0.2512607, 0.01],
    [0.66568, 0.03],
    [2.1731413, 0.1],
  ])('at %f dB over the limit distorts by the ratio %f', (overdriveDb, ratio) => {
    expect(clipSine(10 ** (overdriveDb / 20), 1).thdRatio).toBeCloseTo(ratio, 6);
  });

  it('nears the square wave, whose THD_F is 0.4834258476', () => {
    // √(π²/8 − 1), from the Fourier series of a square wave.
    expect(clipSine(1e7, 1).thdRatio).toBeCloseTo(0.4834258476, 6);
    expect(clipSine(1e7, 1).rms).toBeCloseTo(1, 5);
  });

  it.each([1.02, 1.3, 2, 8])('agrees with sampling at %f times the limit', (amplitude) => {
    const clipped = clipSine(amplitude, 1);
    const reference = sampled(amplitude, 1);
    expect(clipped.rms).toBeCloseTo(reference.rms, 6);
    expect(clipped.thdRatio).toBeCloseTo(reference.thd, 5);
  });

  it('leaves a sine below the limit alone', () => {
    expect(clipSine(0.5, 1)).toEqual({ rms: 0.5 / Math.SQRT2, thdRatio: 0 });
  });
});
