import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyseTone, decodeWav, UnusableRecording } from '../../src/measure/recording/index.ts';
import {
  type BitDepth,
  clipAt,
  placedSweep,
  recordingOf,
  sampleRateHz,
  sweepOf,
  toneOf,
  wavBytes,
  withNoise,
} from './signals.ts';

function refusal(samples: Float64Array, hz = 1000, rate = sampleRateHz): string {
  try {
    analyseTone(recordingOf(samples, rate), { kind: 'tone', hz });
  } catch (error) {
    if (error instanceof UnusableRecording)
      return `${error.reason}: ${error.message}`.replaceAll('\u00a0', ' ');
    throw error;
  }
  return 'measured';
}

describe('refused, and why', () => {
  const fading = toneOf(1000).map((sample, n) => sample * (1 - n / sampleRateHz / 4));
  test.each([
    ['silence', new Float64Array(sampleRateHz), 'silent: The recording is silent.'],
    [
      'another tone',
      toneOf(440),
      'wrong-stimulus: The recording holds a tone of 440 Hz, not the tone of 1 kHz that was named.',
    ],
    [
      'a sweep',
      placedSweep(sweepOf(20, 20_000, 2)),
      'wrong-stimulus: The recording holds a sweep from about 20 Hz to 20 kHz in 2 s, not the tone of 1 kHz that was named.',
    ],
    [
      'noise',
      withNoise(new Float64Array(sampleRateHz), 0.1),
      'wrong-stimulus: No steady tone stands out in the recording',
    ],
    [
      'a short one',
      toneOf(1000, { seconds: 0.2 }),
      'too-short: The recording is too short: the tone plays for 0.16 s, and at 1 kHz at least 0.25 s are needed.',
    ],
    ['a fading one', fading, 'not-steady: The level changes by '],
    [
      'much noise',
      withNoise(toneOf(1000), 0.1),
      'noise: The noise is too high (signal-to-noise ratio 12 dB, at least 20 dB needed).',
    ],
  ])('%s', (_, samples, expected) => {
    expect(refusal(samples)).toContain(expected);
  });
  test('a short low one', () => {
    expect(refusal(toneOf(20, { seconds: 1 }), 20)).toContain(
      'too-short: The recording is too short: the tone plays for 0.8 s, and at 20 Hz at least 1.2 s',
    );
  });
  test('above half the sample rate', () => {
    expect(refusal(toneOf(1000), 30_000)).toContain('sample-rate: The sample rate of 48 kHz is too low');
  });
});

describe('measured', () => {
  test.each([
    ['16', 44_100],
    ['24', 48_000],
    ['32', 96_000],
    ['32f', 192_000],
  ] as [BitDepth, number][])('%s bits at %s Hz', (depth, rate) => {
    const samples = toneOf(1000, { sampleRateHz: rate, harmonics: [0.01, 0.003] });
    const measured = analyseTone(decodeWav(wavBytes([samples], depth, rate)), { kind: 'tone', hz: 1000 });
    expect(measured.amplitude).toBeCloseTo(0.5, 4);
    expect(measured.harmonics[0]?.ratio).toBeCloseTo(0.01, 5);
    expect(measured.harmonics[1]?.ratio).toBeCloseTo(0.003, 5);
    expect(measured.harmonics).toHaveLength(19);
    expect(measured.thd?.ratio).toBeCloseTo(Math.hypot(0.01, 0.003), 5);
    expect(measured.bandHz).toEqual([20, 20_000]);
    expect(measured.clipping.clipped).toBe(false);
  });

  test('THD+N counts noise within 20 Hz to 20 kHz (AES17): by its density', () => {
    // White noise of rms 0.001 beside a sine of rms 0.354: 0.001·√(19980/24000)/0.354.
    const { thdPlusNoise, thd, signalToNoiseDb } = analyseTone(recordingOf(withNoise(toneOf(997), 0.001)), {
      kind: 'tone',
      hz: 1000,
    });
    const expected = (0.001 * Math.sqrt(19_980 / 24_000)) / Math.sqrt(0.125);
    expect(Math.abs(thdPlusNoise / expected - 1)).toBeLessThan(0.02);
    expect(signalToNoiseDb).toBeCloseTo(-20 * Math.log10(expected), 0);
    // No harmonics were there, and none is claimed.
    expect(thd).toMatchObject({ bound: 'at-most', upToOrder: 20 });
    expect(thd?.ratio).toBeLessThan(expected / 10);
  });

  test('clipping is said, and measured all the same', () => {
    const measured = analyseTone(decodeWav(wavBytes([clipAt(toneOf(1000, { amplitude: 1.3 }), 1)], '16')), {
      kind: 'tone',
      hz: 1000,
    });
    expect(measured.clipping.clipped).toBe(true);
    expect(measured.thd?.ratio).toBeGreaterThan(0.05);
  });

  test('above 10 kHz no harmonic lies within the band, and no THD is claimed', () => {
    const measured = analyseTone(recordingOf(toneOf(12_000)), { kind: 'tone', hz: 12_000 });
    expect(measured.harmonics).toEqual([]);
    expect(measured.thd).toBeUndefined();
  });

  test('silence around it, offset, level and frequency do not matter', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 9000, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (hz, leadSeconds, amplitude, offset) => {
          const tone = toneOf(hz, { amplitude, harmonics: [0.02] });
          const samples = new Float64Array(tone.length + Math.round(2 * leadSeconds * sampleRateHz));
          samples.set(tone, Math.round(leadSeconds * sampleRateHz));
          const measured = analyseTone(recordingOf(samples.map((sample) => sample + offset)), {
            kind: 'tone',
            hz,
          });
          expect(Math.abs(20 * Math.log10(measured.amplitude / amplitude))).toBeLessThan(0.001);
          expect(measured.thd?.ratio).toBeCloseTo(0.02, 4);
          expect(Math.abs(measured.hz / hz - 1)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 10 },
    );
  });
});
