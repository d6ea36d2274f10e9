/**
 * What characterise reads off the BiquadFilterNodes of an independent program (npm web-audio-api), by their
 * getFrequencyResponse at third octaves: the filters of the Audio EQ Cookbook (W3C Note, 2021). Results of
 * getFrequencyResponse are float32.
 */
import { describe, expect, test } from 'vitest';
import { OfflineAudioContext } from 'web-audio-api';
import { characterise, type ProfileOutput } from '../../src/measure/index.ts';
import { found, responseRows, responseRun, thirdOctaves, unit, value } from '../measure/ideal-unit.ts';

type FilterType = 'peaking' | 'lowshelf' | 'highshelf' | 'highpass' | 'lowpass';

/** The level of a BiquadFilterNode at a frequency, dB. */
function node(
  type: FilterType,
  settings: { frequency: number; Q?: number; gain?: number },
): (hz: number) => number {
  const filter = new OfflineAudioContext(1, 128, 384_000).createBiquadFilter();
  filter.type = type;
  filter.frequency.value = settings.frequency;
  filter.Q.value = settings.Q ?? 0;
  filter.gain.value = settings.gain ?? 0;
  return (hz) => {
    const magnitude = new Float32Array(1);
    filter.getFrequencyResponse(new Float32Array([hz]), magnitude, new Float32Array(1));
    return 20 * Math.log10(magnitude[0] ?? 0);
  };
}

function read(levelDb: (hz: number) => number): ProfileOutput {
  return characterise('p', [responseRun(levelDb)], unit);
}

/** In Web Audio the Q of a high- or low-pass is in dB: this is 1/√2, a Butterworth filter. */
const butterworthQ = 20 * Math.log10(Math.SQRT1_2);

describe('a peaking filter: gain, frequency and bandwidth as it was set', () => {
  const peaks = [40, 50, 63, 80, 100].flatMap((frequency) =>
    [3, 6, 9, 12].flatMap((gain) => [0.7, 1, Math.SQRT2].map((Q) => ({ frequency, gain, Q }))),
  );
  test.each(peaks)('$gain dB at $frequency Hz, Q $Q', ({ frequency, gain, Q }) => {
    const levelDb = node('peaking', { frequency, Q, gain });
    const output = read(levelDb);
    // Levels are relative to 1 kHz, where the skirt of the filter is still a little above 0 dB.
    const skirtDb = levelDb(1000);
    expect(skirtDb).toBeLessThan(0.4);
    const boost = value(output, 'bass-boost');
    expect(Math.abs(boost.value - (gain - skirtDb))).toBeLessThan(0.02);
    expect(Math.abs(boost.value - (gain - skirtDb))).toBeLessThanOrEqual(boost.expandedUncertainty);
    const at = value(output, 'bass-boost-frequency');
    expect(Math.abs(at.value / frequency - 1)).toBeLessThan(0.005);
    expect(Math.abs(at.value - frequency)).toBeLessThanOrEqual(at.expandedUncertainty);
    // Between half-gain frequencies: 1/Q = 2·sinh(ln 2/2 · BW) (Cookbook; w0/sin w0 is 1 this low at 384 kHz),
    // here for half of what is left above 1 kHz.
    const octaves = (side: 1 | -1): number => {
      let [inside, outside] = [frequency, frequency * 2 ** (side * 6)];
      for (let halving = 0; halving < 40; halving += 1) {
        const middle = Math.sqrt(inside * outside);
        if (levelDb(middle) - skirtDb > (gain - skirtDb) / 2) inside = middle;
        else outside = middle;
      }
      return side * Math.log2(inside / frequency);
    };
    const width = found(output, 'bass-boost-bandwidth');
    const truth = octaves(1) + octaves(-1);
    if (octaves(-1) > Math.log2(frequency / 19.95)) {
      // Its lower half-gain frequency lies below what was read: no width is made up.
      expect(width).toBeUndefined();
      return;
    }
    expect(width).toBeDefined();
    expect(Math.abs((width?.value ?? 0) / truth - 1)).toBeLessThan(0.01);
    expect(Math.abs((width?.value ?? 0) - truth)).toBeLessThanOrEqual(width?.expandedUncertainty ?? 0);
  });

  test.each([0.7, 1, Math.SQRT2])('the half-gain width of Q %s is the Cookbook’s bandwidth', (Q) => {
    const width = value(read(node('peaking', { frequency: 80, Q, gain: 9 })), 'bass-boost-bandwidth').value;
    const cookbook = (2 / Math.LN2) * Math.asinh(1 / (2 * Q));
    // The skirt at 1 kHz, from which the boost is counted, narrows it by less than 1.5 %.
    expect(Math.abs(width / cookbook - 1)).toBeLessThan(0.015);
  });
});

describe('a low shelf', () => {
  test.each([
    [100, 9],
    [150, 6],
    [200, 4],
  ])('at %s Hz, +%s dB: the boost is the highest reading, at 20 Hz, and has no width', (frequency, gain) => {
    const levelDb = node('lowshelf', { frequency, gain });
    const output = read(levelDb);
    const boost = value(output, 'bass-boost');
    expect(boost.value).toBeCloseTo(levelDb(19.9526) - levelDb(1000), 3);
    expect(boost.conditions.hz).toBeCloseTo(19.9526, 3);
    // The summit may be anywhere up to the next reading, and below.
    expect(value(output, 'bass-boost-frequency').expandedUncertainty).toBeGreaterThan(4);
    expect(found(output, 'bass-boost-bandwidth')).toBeUndefined();
    expect(value(output, 'lower-corner')).toMatchObject({ bound: 'at-most' });
  });
  test('at 100 Hz, S = 1, +9 dB: 8.98293 dB at 20 Hz and 0.00106 dB at 1 kHz (Cookbook, recomputed)', () => {
    const boost = value(read(node('lowshelf', { frequency: 100, gain: 9 })), 'bass-boost').value;
    expect(boost).toBeCloseTo(8.98293 - 0.00106, 2);
  });
});

describe('high-pass and low-pass of the second order: −3.01 dB where they were set, 12.04 dB an octave', () => {
  test.each([31.5, 45, 63, 80, 100, 140, 200])('high-pass at %s Hz', (frequency) => {
    const output = read(node('highpass', { frequency, Q: butterworthQ }));
    const corner = value(output, 'lower-corner');
    expect(Math.abs(corner.value / frequency - 1)).toBeLessThan(0.005);
    expect(Math.abs(value(output, 'lower-slope').value - 12.0412)).toBeLessThan(0.2);
    expect(value(output, 'upper-corner')).toMatchObject({ bound: 'at-least' });
    // No boost: the highest level in the bass is not above 1 kHz.
    expect(value(output, 'bass-boost').value).toBeLessThan(0.01);
    expect(found(output, 'bass-boost-frequency')).toBeUndefined();
  });
  test.each([5000, 7100, 9000, 11_200])('low-pass at %s Hz', (frequency) => {
    const output = read(node('lowpass', { frequency, Q: butterworthQ }));
    expect(Math.abs(value(output, 'upper-corner').value / frequency - 1)).toBeLessThan(0.005);
    // At a sample rate of 384 kHz the bilinear transform steepens it by less than that.
    expect(Math.abs(value(output, 'upper-slope').value - 12.0412)).toBeLessThan(0.2);
    expect(value(output, 'lower-corner')).toMatchObject({ bound: 'at-most' });
  });
  test.each([
    ['a ringing high-pass (Q = 1.41)', 'highpass', 3.0103],
    ['a damped high-pass (Q = 0.5)', 'highpass', -6.0206],
  ] as const)('%s: the corner is where the response is half power, within its uncertainty', (_, type, Q) => {
    for (const frequency of [40, 63, 80, 125]) {
      const levelDb = node(type, { frequency, Q });
      let [inside, outside] = [1000, 5];
      for (let halving = 0; halving < 50; halving += 1) {
        const middle = Math.sqrt(inside * outside);
        if (levelDb(middle) - levelDb(1000) > -3.0103) inside = middle;
        else outside = middle;
      }
      const corner = value(read(levelDb), 'lower-corner');
      expect(Math.abs(corner.value / inside - 1), `${frequency} Hz`).toBeLessThan(0.005);
      expect(Math.abs(corner.value - inside), `${frequency} Hz`).toBeLessThanOrEqual(
        corner.expandedUncertainty,
      );
    }
  });
});

test('a boost above a high-pass: corner, boost and width within their uncertainties', () => {
  const boostDb = node('peaking', { frequency: 80, Q: 1, gain: 6 });
  const filterDb = node('highpass', { frequency: 40, Q: butterworthQ });
  const levelDb = (hz: number): number => boostDb(hz) + filterDb(hz);
  const output = read(levelDb);
  const relativeDb = (hz: number): number => levelDb(hz) - levelDb(1000);
  const grid = Array.from({ length: 40_001 }, (_, index) => 20 * 2 ** (index / 10_000));
  const top = grid.reduce((best, hz) => (relativeDb(hz) > relativeDb(best) ? hz : best));
  const first = (levelAtLeast: number): number => grid.find((hz) => relativeDb(hz) >= levelAtLeast) ?? 0;
  const last = (levelAtLeast: number): number => grid.findLast((hz) => relativeDb(hz) >= levelAtLeast) ?? 0;
  const half = relativeDb(top) / 2;
  const truths = [
    ['lower-corner', first(-3.0103)],
    ['bass-boost', relativeDb(top)],
    ['bass-boost-frequency', top],
    ['bass-boost-bandwidth', Math.log2(last(half) / first(half))],
  ] as const;
  for (const [name, truth] of truths) {
    const read = value(output, name);
    expect(Math.abs(read.value - truth), name).toBeLessThanOrEqual(read.expandedUncertainty);
    expect(Math.abs(read.value / truth - 1), name).toBeLessThan(0.01);
  }
});

test('a high shelf of −6 dB at 4 kHz: the treble tilt is its level at 10 kHz', () => {
  const levelDb = node('highshelf', { frequency: 4000, gain: -6 });
  const tilt = value(read(levelDb), 'treble-tilt');
  expect(Math.abs(tilt.value - (levelDb(10_000) - levelDb(1000)))).toBeLessThanOrEqual(
    tilt.expandedUncertainty,
  );
  expect(tilt.value).toBeLessThan(-5);
});

test('a dip of 3 dB at 2 kHz, Q 2: the ripple is that of its response at third octaves', () => {
  const levelDb = node('peaking', { frequency: 2000, Q: 2, gain: -3 });
  const rows = responseRows(levelDb);
  expect(rows.length).toBe(thirdOctaves().length - 1);
  const ripple = value(read(levelDb), 'ripple');
  expect(ripple.bound).toBe('exact');
  expect(Math.abs(ripple.value - 3)).toBeLessThan(0.15);
});
