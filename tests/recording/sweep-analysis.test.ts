import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactCentre } from '../../src/measure/index.ts';
import {
  analyseSweep,
  decodeWav,
  growthSeconds,
  type Sweep,
  UnusableRecording,
} from '../../src/measure/recording/index.ts';
import {
  type Biquad,
  type BitDepth,
  biquadDb,
  clipAt,
  filtered,
  placedSweep,
  recordingOf,
  sampleRateHz,
  sweepOf,
  toneOf,
  wavBytes,
  withNoise,
} from './signals.ts';

const sweep = sweepOf(20, 20_000, 2);

/** Why a recording is refused as one of a sweep. */
function refusal(samples: Float64Array, named: Sweep = sweep, rate = sampleRateHz): string {
  try {
    analyseSweep(recordingOf(samples, rate), named);
  } catch (error) {
    if (error instanceof UnusableRecording)
      return `${error.reason}: ${error.message}`.replaceAll('\u00a0', ' ');
    throw error;
  }
  return 'measured';
}

/** A sweep that rises like `sweep` but from and to other frequencies. */
function alike(fromHz: number, toHz: number): Sweep {
  return sweepOf(fromHz, toHz, growthSeconds(sweep) * Math.log(toHz / fromHz));
}

const quiet = (samples: Float64Array): Float64Array => withNoise(samples, 1e-4);

describe('refused, and why', () => {
  const named = 'the sweep from 20 Hz to 20 kHz in 2 s that was named';
  test.each([
    ['silence', new Float64Array(2.5 * sampleRateHz), 'silent: The recording is silent.'],
    [
      'next to silence',
      withNoise(new Float64Array(2.5 * sampleRateHz), 1e-6),
      'silent: The recording is all but silent: its peaks reach −107 dBFS.',
    ],
    [
      'a tone',
      quiet(toneOf(1000, { seconds: 3 })),
      `wrong-stimulus: The recording holds a steady tone of about 1 kHz, not ${named}.`,
    ],
    [
      'a longer sweep',
      quiet(placedSweep(sweepOf(20, 20_000, 3))),
      `wrong-stimulus: The recording holds a sweep from about 20 Hz to 20 kHz in 3 s, not ${named}.`,
    ],
    [
      'a sweep longer by a fiftieth',
      quiet(placedSweep(sweepOf(20, 20_000, 2.04))),
      'wrong-stimulus: The recording holds a sweep from about 20',
    ],
    [
      'a sweep with other ends',
      quiet(placedSweep(sweepOf(50, 15_000, 2))),
      'wrong-stimulus: The recording holds a sweep from about 50',
    ],
    [
      'one that begins sooner',
      quiet(placedSweep(alike(10, 20_000))),
      'wrong-stimulus: The sweep in the recording begins below 20 Hz',
    ],
    [
      'one that goes on',
      quiet(placedSweep(alike(20, 23_500))),
      'wrong-stimulus: The sweep in the recording goes on above 16 kHz',
      alike(20, 16_000),
    ],
    [
      'one that falls',
      quiet(placedSweep(sweep).reverse()),
      'wrong-stimulus: The recording holds a sweep from about 20 kHz to 20 Hz in 2 s',
    ],
    [
      'a linear one',
      quiet(
        Float64Array.from(
          { length: 2 * sampleRateHz },
          (_, n) => 0.5 * Math.sin(2 * Math.PI * (20 * (n / 48_000) + 4995 * (n / 48_000) ** 2)),
        ),
      ),
      'wrong-stimulus: The recording holds a sweep that rises by equal hertz',
    ],
    [
      'noise',
      withNoise(new Float64Array(2.5 * sampleRateHz), 0.1),
      'wrong-stimulus: No sweep from 20 Hz to 20 kHz in 2 s stands out in the recording.',
    ],
    [
      'one cut off in the middle',
      quiet(placedSweep(sweep, { leadSeconds: 0 }).subarray(0, sampleRateHz)),
      'too-short: The recording is too short: 1 s, and the sweep takes 2 s.',
    ],
    [
      'one that was under way',
      quiet(placedSweep(sweep, { leadSeconds: 0, tailSeconds: 1 }).subarray(0.5 * sampleRateHz)),
      'too-short: The recording is too short: it holds 1.5 s of the sweep’s 2 s, from 112 Hz to 20 kHz.',
    ],
    ['one that is clipped', clipAt(placedSweep(sweep), 0.45), 'clipped: The recording is clipped: '],
  ] as [string, Float64Array, string, Sweep?][])('%s', (_, samples, expected, other) => {
    expect(refusal(samples, other)).toContain(expected);
  });
  test.each([
    [40, alike(40, 20_000), /begins at about ([\d.]+) Hz/],
    [8, alike(20, 8000), /ends at about ([\d.]+) kHz/],
  ])('the end found is told: about %s', (end, played, pattern) => {
    const told = Number(pattern.exec(refusal(quiet(placedSweep(played))))?.[1]);
    expect(Math.abs(told / end - 1)).toBeLessThan(0.12);
  });
  test('a sample rate that does not hold the sweep', () => {
    expect(refusal(placedSweep(sweep, { sampleRateHz: 32_000 }), sweep, 32_000)).toBe(
      'sample-rate: The sample rate of 32 kHz is too low: it holds frequencies below 16 kHz, and the sweep reaches 20 kHz.',
    );
  });
  test('too long for the memory of a workshop computer', () => {
    expect(refusal(new Float64Array(2 ** 23))).toMatch(
      /^too-long: The recording is 175 s long; .* 173 s is the most/,
    );
  });
  test('noise, with the signal-to-noise ratio found: within 2 dB of what was mixed', () => {
    // A sine sweep of amplitude 0.5 has rms 0.354; of white noise five sixths lie below 20 kHz.
    const found = refusal(withNoise(placedSweep(sweep), 0.354 * 10 ** (-12 / 20)));
    const ratio = Number(/ratio (\d+) dB, at least 20 dB needed/.exec(found)?.[1]);
    expect(found).toContain('noise: The noise is too high (signal-to-noise ratio ');
    expect(Math.abs(ratio - 12.8)).toBeLessThan(2);
  });
});

describe('measured', () => {
  test.each([
    ['16', 44_100],
    ['24', 48_000],
    ['32', 96_000],
    ['32f', 44_100],
  ] as [BitDepth, number][])(
    '%s bits at %s Hz: flat within a hundredth of a decibel, hardly distorted',
    (depth, rate) => {
      const samples = placedSweep(sweep, { sampleRateHz: rate });
      const measured = analyseSweep(decodeWav(wavBytes([samples], depth, rate)), sweep);
      expect(measured.levels.map(({ hz }) => hz)).toEqual(
        Array.from({ length: 30 }, (_, index) => exactCentre(index - 16)),
      );
      for (const { hz, amplitude } of measured.levels) {
        expect(Math.abs(20 * Math.log10(amplitude / 0.5)), `${hz} Hz`).toBeLessThan(0.01);
      }
      for (const { hz, ratio } of measured.thd) expect(ratio, `${hz} Hz`).toBeLessThan(hz > 31 ? 3e-4 : 3e-3);
      expect(measured.startSeconds).toBeCloseTo(0.4, 4);
      expect(measured.leftOut).toEqual([]);
    },
  );

  test('a recording that began during the sweep: what was missed is left out, the rest is right', () => {
    const late = placedSweep(sweep, { leadSeconds: 0 }).subarray(0.15 * sampleRateHz);
    const measured = analyseSweep(recordingOf(late), sweep);
    expect(measured.startSeconds).toBeCloseTo(-0.15, 4);
    // 0.15 s into it the sweep has risen to 33.6 Hz.
    expect(measured.leftOut.map(({ hz }) => Math.round(hz))).toEqual([25, 32]);
    for (const { amplitude } of measured.levels) expect(amplitude).toBeCloseTo(0.5, 4);
    // The cut spreads into the harmonics' places, and they are not passed off as distortion.
    for (const { hz, ratio, bound } of measured.thd) {
      if (bound === 'exact') expect(ratio, `${hz} Hz`).toBeLessThan(0.001);
    }
  });

  test('a unit whose low end falls by 48 dB an octave is not taken for another sweep', () => {
    // Eighth-order Butterworth high-pass at 100 Hz by four cookbook sections.
    const sections = [0.50979558, 0.60134489, 0.89997622, 2.5629154].map((q): Biquad => {
      const w = (2 * Math.PI * 100) / sampleRateHz;
      const alpha = Math.sin(w) / (2 * q);
      const a0 = 1 + alpha;
      const b = (1 + Math.cos(w)) / 2 / a0;
      return [b, -2 * b, b, (-2 * Math.cos(w)) / a0, (1 - alpha) / a0];
    });
    const samples = sections.reduce(filtered, placedSweep(sweep));
    const measured = analyseSweep(recordingOf(quiet(samples)), sweep);
    const at63 = measured.levels.find(({ hz }) => Math.round(hz) === 63);
    const expected = sections.reduce((total, one) => total + biquadDb(one, exactCentre(-12)), 0);
    expect(20 * Math.log10((at63?.amplitude ?? 0) / 0.5)).toBeCloseTo(expected, 0);
    // At 25 Hz it is 96 dB down, far below the noise: not told, rather than guessed.
    expect(measured.leftOut).toContainEqual({ hz: exactCentre(-16), reason: 'too near the noise' });
    expect(measured.levels.length + measured.leftOut.length).toBe(30);
  });

  test('a stimulus that fades in and out is not taken for a unit that falls off at 20 kHz', () => {
    const fade = 0.01 * sampleRateHz;
    const start = 0.4 * sampleRateHz;
    const samples = placedSweep(sweep).map((sample, n) => {
      const inside = Math.min(n - start, start + 2 * sampleRateHz - n);
      return sample * (0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, Math.min(1, inside / fade))));
    });
    const measured = analyseSweep(recordingOf(samples), sweep);
    expect(measured.leftOut).toEqual([
      { hz: exactCentre(13), reason: 'a sweep that fades there looks the same' },
    ]);
    for (const { hz, amplitude } of measured.levels.filter((one) => one.hz > 31)) {
      expect(Math.abs(20 * Math.log10(amplitude / 0.5)), `${hz} Hz`).toBeLessThan(0.1);
    }
  });

  test('sound that is cut off at 16 kHz, as coded sound is, is measured', () => {
    expect(refusal(quiet(placedSweep(alike(20, 16_000))))).toBe('measured');
  });

  test('latency, level, offset and a little noise do not change the response', () => {
    const peaking: Biquad = [1.03148680404, -1.92015765785, 0.905239818552, -1.92015765785, 0.936726622591];
    const expected = (hz: number): number => biquadDb(peaking, hz);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0.01, max: 0.45, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.nat(1e6),
        (leadSeconds, tailSeconds, amplitude, offset, seed) => {
          const played = filtered(placedSweep(sweep, { leadSeconds, tailSeconds, amplitude }), peaking);
          const samples = withNoise(played, amplitude * 1e-4, seed).map((sample) => sample + offset);
          const { levels } = analyseSweep(recordingOf(samples), sweep);
          expect(levels).toHaveLength(30);
          for (const { hz, amplitude: found } of levels.filter((one) => one.hz > 31)) {
            const off = 20 * Math.log10(found / amplitude) - expected(hz);
            expect(Math.abs(off), `${hz} Hz`).toBeLessThan(0.05);
          }
        },
      ),
      { numRuns: 6 },
    );
  });
});
