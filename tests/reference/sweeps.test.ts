/** Sweeps and tones through systems whose response and distortion are known from elsewhere. */
import { beforeAll, describe, expect, test } from 'vitest';
import { OfflineAudioContext } from 'web-audio-api';
import { hardClipThd } from '../../src/measure/index.ts';
import {
  analyseSweep,
  analyseTone,
  harmonicLeadSeconds,
  type Sweep,
  type SweepMeasurement,
} from '../../src/measure/recording/index.ts';
import {
  type Biquad,
  biquadDb,
  clipAt,
  filtered,
  placedSweep,
  polynomialSweep,
  recordingOf,
  sampleRateHz,
  sweepOf,
  toneOf,
} from '../recording/signals.ts';

const audioBand = (seconds: number): Sweep => sweepOf(20, 20_000, seconds);

describe('times of the harmonics (Farina, AES 108th convention, 2000; figures recomputed independently)', () => {
  test.each([
    [2, 1.0034333],
    [3, 1.5904042],
  ])('20 Hz to 20 kHz in 10 s: order %s leads by %s s', (order, seconds) => {
    expect(harmonicLeadSeconds(audioBand(10), order)).toBeCloseTo(seconds, 7);
  });
  test('a harmonic is where the sweep is, the lead later', () => {
    const sweep = audioBand(10);
    const hzAt = (seconds: number): number => 20 * 1000 ** (seconds / 10);
    for (const order of [2, 3, 5]) {
      expect(order * hzAt(2)).toBeCloseTo(hzAt(2 + harmonicLeadSeconds(sweep, order)), 8);
    }
  });
});

/** Levels relative to 1 kHz by frequency, dB. */
function relativeDb(measured: SweepMeasurement): [hz: number, db: number][] {
  const reference = measured.levels.find(({ hz }) => hz === 1000);
  if (!reference) throw new Error('no level at 1 kHz');
  return measured.levels.map(({ hz, amplitude }) => [hz, 20 * Math.log10(amplitude / reference.amplitude)]);
}

/** 31.5 Hz to 16 kHz, where levels are held to 0.05 dB. */
const held = ([hz]: readonly [number, number]): boolean => hz > 31 && hz < 16_000;

/** The largest difference, dB, and how many frequencies it was taken over. */
function worst(
  levels: readonly [number, number][],
  expected: (hz: number) => number,
): { db: number; of: number } {
  const some = levels.filter(held);
  return {
    db: Math.max(...some.map(([hz, db]) => Math.abs(db - expected(hz) + expected(1000)))),
    of: some.length,
  };
}

describe('a sweep through filters of the W3C Audio EQ Cookbook (coefficients as recomputed, 48 kHz)', () => {
  const filters: [string, Biquad][] = [
    [
      'peaking 1 kHz, Q 1.4142135, +6 dB',
      [1.03148680404, -1.92015765785, 0.905239818552, -1.92015765785, 0.936726622591],
    ],
    [
      'low shelf 100 Hz, S 1, +9 dB',
      [1.0048607973, -1.98562060519, 0.981045426946, -1.98571274398, 0.985814085448],
    ],
    [
      'high-pass 80 Hz, Q 1/√2',
      [0.992622542756, -1.98524508551, 0.992622542756, -1.9851906579, 0.985299513128],
    ],
  ];
  test.each(filters)('%s in 2 s', (_, biquad) => {
    const sweep = audioBand(2);
    const samples = filtered(placedSweep(sweep, { amplitude: 0.3 }), biquad);
    const { db, of } = worst(relativeDb(analyseSweep(recordingOf(samples), sweep)), (hz) =>
      biquadDb(biquad, hz),
    );
    expect(of).toBe(28);
    expect(db).toBeLessThan(0.02);
  });
  test('high-pass in 10 s, to the thousandth of a decibel', () => {
    const [, biquad] = filters[2] ?? [];
    if (!biquad) throw new Error('no such filter');
    const sweep = audioBand(10);
    const measured = analyseSweep(recordingOf(filtered(placedSweep(sweep), biquad)), sweep);
    expect(measured.levels).toHaveLength(30);
    expect(worst(relativeDb(measured), (hz) => biquadDb(biquad, hz)).db).toBeLessThan(0.005);
    // What the published table of the three filters gives at nominal frequencies near by (−3.01 dB at 80 Hz).
    const at80 = relativeDb(measured).find(([hz]) => Math.abs(hz - 79.4328) < 0.001);
    expect(at80?.[1]).toBeCloseTo(biquadDb(biquad, 79.4328), 2);
  });
});

describe('a sweep through BiquadFilterNodes of the Web Audio API (web-audio-api, float32)', () => {
  const nodes = [
    { type: 'peaking', frequency: 1000, Q: Math.SQRT2, gain: 6 },
    { type: 'lowshelf', frequency: 100, Q: 1, gain: 9 },
    // In Web Audio the Q of this type is in dB: −3.01 dB is 1/√2.
    { type: 'highpass', frequency: 80, Q: 20 * Math.log10(Math.SQRT1_2), gain: 0 },
    { type: 'lowpass', frequency: 9000, Q: 0, gain: 0 },
  ] as const;
  test.each(nodes)(
    '$type at $frequency Hz agrees with getFrequencyResponse',
    async ({ type, frequency, Q, gain }) => {
      const sweep = audioBand(2);
      const played = placedSweep(sweep, { amplitude: 0.3 });
      const context = new OfflineAudioContext(1, played.length, sampleRateHz);
      const buffer = context.createBuffer(1, played.length, sampleRateHz);
      buffer.getChannelData(0).set(played);
      const source = context.createBufferSource();
      source.buffer = buffer;
      const filter = context.createBiquadFilter();
      filter.type = type;
      filter.frequency.value = frequency;
      filter.Q.value = Q;
      filter.gain.value = gain;
      source.connect(filter);
      filter.connect(context.destination);
      source.start();
      const rendered = Float64Array.from((await context.startRendering()).getChannelData(0));

      const levels = relativeDb(analyseSweep(recordingOf(rendered), sweep));
      const expected = (hz: number): number => {
        const magnitude = new Float32Array(1);
        filter.getFrequencyResponse(new Float32Array([hz]), magnitude, new Float32Array(1));
        return 20 * Math.log10(magnitude[0] ?? 0);
      };
      const { db, of } = worst(levels, expected);
      expect(of).toBe(28);
      expect(db).toBeLessThan(0.05);
    },
  );
});

describe('a sweep through y = x + a2·x² + a3·x³, whose harmonics follow from the angle sums', () => {
  const a2 = 0.08;
  const a3 = -0.05;
  const fundamental = 1 + (3 * a3) / 4;
  const second = a2 / 2 / fundamental;
  const third = Math.abs(a3) / 4 / fundamental;
  let measured: SweepMeasurement;
  beforeAll(() => {
    measured = analyseSweep(recordingOf(polynomialSweep(audioBand(3), a2, a3, 0.4)), audioBand(3));
  });

  test.each([
    [2, second, 10_000],
    [3, third, 6400],
  ])('order %s is %s of the fundamental', (order, ratio, upToHz) => {
    const some = measured.distortion.filter((one) => one.order === order && one.hz > 31);
    expect(some.length).toBeGreaterThan(22);
    expect(Math.max(...some.map(({ hz }) => hz))).toBeLessThanOrEqual(upToHz);
    for (const one of some) {
      expect(one.bound, `${one.hz} Hz`).toBe('exact');
      expect(Math.abs(one.ratio / ratio - 1), `${one.hz} Hz`).toBeLessThan(0.01);
    }
  });
  test('orders 4 and 5 are not there: below a ten-thousandth', () => {
    const some = measured.distortion.filter((one) => one.order >= 4 && one.hz > 31);
    expect(some.length).toBeGreaterThan(30);
    for (const one of some) expect(one.ratio, `order ${one.order}, ${one.hz} Hz`).toBeLessThan(1e-4);
  });
  test('THD_F is the root of the sum of their squares', () => {
    const some = measured.thd.filter(({ hz }) => hz > 31);
    expect(some.length).toBe(24);
    for (const one of some) {
      expect(Math.abs(one.ratio / Math.hypot(second, third) - 1), `${one.hz} Hz`).toBeLessThan(0.01);
    }
  });
});

describe('tones', () => {
  test('amplitudes 1, 0.1, 0.05, 0.02: THD_F and THD_R of IEC 60268-3, 14.12 (as transcribed)', () => {
    const measured = analyseTone(recordingOf(toneOf(997, { harmonics: [0.1, 0.05, 0.02] })), {
      kind: 'tone',
      hz: 1000,
    });
    expect(measured.thd?.ratio).toBeCloseTo(0.1135782, 6);
    // Without noise, THD+N relative to the whole is THD_R.
    expect(measured.thdPlusNoise).toBeCloseTo(0.1128526, 6);
    expect(measured.harmonics.slice(0, 3).map(({ ratio }) => Number(ratio.toFixed(6)))).toEqual([
      0.1, 0.05, 0.02,
    ]);
    expect(measured.hz).toBeCloseTo(997, 6);
    expect(measured.amplitude).toBeCloseTo(0.5, 6);
  });
  test.each([0.98, 0.9, 0.7, 0.5])('a sine clipped hard at %s of its amplitude: THD within 1 %', (limit) => {
    const samples = clipAt(toneOf(100.7, { amplitude: 0.8 }), 0.8 * limit);
    const measured = analyseTone(recordingOf(samples), { kind: 'tone', hz: 100 });
    expect(Math.abs((measured.thd?.ratio ?? 0) / hardClipThd(limit) - 1)).toBeLessThan(0.01);
  });
  test('a clipping sweep agrees, as far as orders 2 to 5 go, with the Fourier sum of a clipped sine', () => {
    // A unit's own clipping, well below the interface's full scale; the noise keeps its tops from being equal.
    const limit = 0.8;
    const amplitude = (order: number): number => {
      const angle = Math.asin(limit);
      // (2/π)·∫ over a period of the clipped sine times sin nθ, by quarters; odd orders only.
      const steps = 20_000;
      let total = 0;
      for (let i = 0; i < steps; i += 1) {
        const theta = ((i + 0.5) / steps) * (Math.PI / 2);
        total += Math.min(limit, Math.sin(theta)) * Math.sin(order * theta);
      }
      return angle > 0 ? ((4 / Math.PI) * total * (Math.PI / 2)) / steps : 0;
    };
    const expected = Math.hypot(amplitude(3), amplitude(5)) / amplitude(1);
    const sweep = audioBand(2);
    const noise = toneOf(1, { seconds: 3, amplitude: 0 }).map((_, n) => 1e-5 * Math.sin(n * n * 0.37));
    const samples = clipAt(placedSweep(sweep), 0.5 * limit).map((sample, n) => sample + (noise[n] ?? 0));
    const measured = analyseSweep(recordingOf(samples), sweep);
    // Up to 1 kHz, so that what the sampled clip folds back stays small.
    const some = measured.thd.filter(({ hz, upToOrder }) => hz > 60 && hz <= 1000 && upToOrder === 5);
    expect(some.length).toBe(13);
    for (const one of some) expect(Math.abs(one.ratio / expected - 1), `${one.hz} Hz`).toBeLessThan(0.02);
  });
});
