/**
 * The filters of the W3C Note “Audio EQ Cookbook” (2021): coefficients and levels at 48 kHz as recomputed with an
 * independent program, and any filter against the BiquadFilterNodes of another one (npm web-audio-api, whose
 * results are float32, whose shelves have S = 1 and whose high-pass takes Q in dB).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OfflineAudioContext } from 'web-audio-api';
import {
  bentRatio,
  biquadDb,
  biquadOf,
  type Filter,
  prototypeDb,
  prototypeOf,
  shelfQ,
} from '../../src/measure/index.ts';

const rate = 48_000;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: the figures below were computed with these digits
const peak: Filter = { kind: 'peaking', hz: 1000, gainDb: 6, q: 1.4142135 };
const shelf: Filter = { kind: 'low-shelf', hz: 100, gainDb: 9, q: shelfQ(9, 1) };
const highPass: Filter = { kind: 'high-pass', hz: 80, gainDb: 0, q: Math.SQRT1_2 };

test.each([
  [peak, [1.03148680404, -1.92015765785, 0.905239818552], [-1.92015765785, 0.936726622591]],
  [shelf, [1.0048607973, -1.98562060519, 0.981045426946], [-1.98571274398, 0.985814085448]],
  [highPass, [0.992622542756, -1.98524508551, 0.992622542756], [-1.9851906579, 0.985299513128]],
])('coefficients: %o', (filter, b, a) => {
  const found = biquadOf(filter, rate);
  b.forEach((one, index) => {
    expect(found.b[index]).toBeCloseTo(one, 11);
  });
  [1, ...a].forEach((one, index) => {
    expect(found.a[index]).toBeCloseTo(one, 11);
  });
});

test.each([
  [peak, [0.00129, 0.00519, 0.01291, 0.02089, 0.0328, 6, 1.12242]],
  [shelf, [8.98293, 8.73672, 7.64063, 6.25607, 4.5, 0.00106, 0.00007]],
  [highPass, [-24.09948, -12.3046, -5.56324, -3.0103, -1.49093, -0.00018, -0.00001]],
])('levels at 20 to 2000 Hz: %o', (filter, levels) => {
  [20, 40, 63, 80, 100, 1000, 2000].forEach((hz, index) => {
    expect(biquadDb(biquadOf(filter, rate), hz, rate)).toBeCloseTo(levels[index] ?? Number.NaN, 4.9);
    const ratio = bentRatio(hz, filter.hz, rate);
    expect(prototypeDb(prototypeOf(filter), ratio)).toBeCloseTo(levels[index] ?? Number.NaN, 4.9);
  });
});

describe('against BiquadFilterNode.getFrequencyResponse', () => {
  const nodes = {
    peaking: 'peaking',
    'low-shelf': 'lowshelf',
    'high-shelf': 'highshelf',
    'high-pass': 'highpass',
  } as const;
  const context = new OfflineAudioContext(1, 128, rate);

  test('any filter at any frequency: within 0.002 dB where it is not far down', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.constantFrom('peaking', 'low-shelf', 'high-shelf', 'high-pass'),
        fc.double({ min: Math.log(20), max: Math.log(15_000), noNaN: true }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.double({ min: 0.4, max: 8, noNaN: true }),
        fc.array(fc.double({ min: Math.log(20), max: Math.log(20_000), noNaN: true }), { minLength: 4 }),
        (kind, logHz, gainDb, anyQ, logs) => {
          const isShelf = kind === 'low-shelf' || kind === 'high-shelf';
          const q = isShelf ? Math.SQRT1_2 : anyQ;
          const node = context.createBiquadFilter();
          node.type = nodes[kind];
          node.frequency.value = Math.exp(logHz);
          node.gain.value = gainDb;
          node.Q.value = kind === 'high-pass' ? 20 * Math.log10(q) : q;
          const frequencies = new Float32Array(logs.map(Math.exp));
          const magnitudes = new Float32Array(logs.length);
          node.getFrequencyResponse(frequencies, magnitudes, new Float32Array(logs.length));
          const biquad = biquadOf({ kind, hz: node.frequency.value, gainDb: node.gain.value, q }, rate);
          frequencies.forEach((hz, index) => {
            const theirsDb = 20 * Math.log10(magnitudes[index] ?? 0);
            if (theirsDb < -60) return;
            compared += 1;
            expect(Math.abs(biquadDb(biquad, hz, rate) - theirsDb)).toBeLessThan(0.002);
          });
        },
      ),
      { numRuns: 300, seed: 20260314 },
    );
    expect(compared).toBeGreaterThan(1000);
  });
});
