/** Recordings made for tests: sweeps and tones through known systems, as WAV bytes where wanted. */
import wavefile from 'wavefile';
import {
  growthSeconds,
  type Recording,
  type Sweep,
  sweepSamples,
} from '../../src/measure/recording/index.ts';

export const sampleRateHz = 48_000;

export function sweepOf(fromHz: number, toHz: number, seconds: number): Sweep {
  return { kind: 'sweep', fromHz, toHz, seconds };
}

export interface Placed {
  readonly sampleRateHz?: number;
  readonly leadSeconds?: number;
  readonly tailSeconds?: number;
  readonly amplitude?: number;
}

/** Samples of a sweep with silence before and after. */
export function placedSweep(sweep: Sweep, placed: Placed = {}): Float64Array {
  const { leadSeconds = 0.4, tailSeconds = 0.4, amplitude = 0.5, sampleRateHz: rate = sampleRateHz } = placed;
  const played = sweepSamples(sweep, rate);
  const samples = new Float64Array(played.length + Math.round((leadSeconds + tailSeconds) * rate));
  samples.set(
    played.map((value) => amplitude * value),
    Math.round(leadSeconds * rate),
  );
  return samples;
}

/**
 * A sweep through the memoryless y = x + a2·x² + a3·x³, written out as its harmonics so that none beyond half
 * the sample rate folds back: for x = sin φ, x² = (1 − cos 2φ)/2 and x³ = (3 sin φ − sin 3φ)/4.
 */
export function polynomialSweep(sweep: Sweep, a2: number, a3: number, amplitude: number): Float64Array {
  const growth = growthSeconds(sweep);
  const samples = placedSweep(sweep, { amplitude: 0 });
  const start = Math.round(0.4 * sampleRateHz);
  for (let n = 0; n < Math.round(sweep.seconds * sampleRateHz); n += 1) {
    const seconds = n / sampleRateHz;
    const phase = 2 * Math.PI * sweep.fromHz * growth * Math.expm1(seconds / growth);
    const hz = sweep.fromHz * Math.exp(seconds / growth);
    const below = (order: number): number => (order * hz < sampleRateHz / 2 ? 1 : 0);
    samples[start + n] =
      amplitude *
      ((1 + (3 * a3) / 4) * Math.sin(phase) +
        (a2 / 2) * (1 - below(2) * Math.cos(2 * phase)) -
        (a3 / 4) * below(3) * Math.sin(3 * phase));
  }
  return samples;
}

export interface ToneOptions {
  readonly sampleRateHz?: number;
  readonly seconds?: number;
  readonly amplitude?: number;
  /** Amplitudes of the harmonics from the second on, relative to the fundamental. */
  readonly harmonics?: readonly number[];
}

export function toneOf(hz: number, options: ToneOptions = {}): Float64Array {
  const { sampleRateHz: rate = sampleRateHz, seconds = 2, amplitude = 0.5, harmonics = [] } = options;
  return Float64Array.from({ length: Math.round(seconds * rate) }, (_, n) => {
    const phase = (2 * Math.PI * hz * n) / rate;
    const above = harmonics.reduce(
      (total, one, index) => total + one * Math.sin((index + 2) * phase + index + 1),
      0,
    );
    return amplitude * (Math.sin(phase + 0.3) + above);
  });
}

/** White Gaussian noise of rms 1 from a seed (mulberry32 and Box–Muller), added at `rms`. */
export function withNoise(samples: Float64Array, rms: number, seed = 1): Float64Array {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return samples.map(
    (sample) => sample + rms * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  );
}

export type Biquad = readonly [b0: number, b1: number, b2: number, a1: number, a2: number];

/** A direct-form biquad, a0 = 1. */
export function filtered(samples: Float64Array, [b0, b1, b2, a1, a2]: Biquad): Float64Array {
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return samples.map((x) => {
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    return y;
  });
}

/** |H| of a biquad in dB: its transfer function on the unit circle. */
export function biquadDb([b0, b1, b2, a1, a2]: Biquad, hz: number, rate = sampleRateHz): number {
  const w = (2 * Math.PI * hz) / rate;
  const above = Math.hypot(
    b0 + b1 * Math.cos(w) + b2 * Math.cos(2 * w),
    b1 * Math.sin(w) + b2 * Math.sin(2 * w),
  );
  const below = Math.hypot(
    1 + a1 * Math.cos(w) + a2 * Math.cos(2 * w),
    a1 * Math.sin(w) + a2 * Math.sin(2 * w),
  );
  return 20 * Math.log10(above / below);
}

export function clipAt(samples: Float64Array, limit: number): Float64Array {
  return samples.map((sample) => Math.max(-limit, Math.min(limit, sample)));
}

export function recordingOf(samples: Float64Array, rate = sampleRateHz): Recording {
  return { sampleRateHz: rate, samples };
}

export type BitDepth = '16' | '24' | '32' | '32f';

/** The bytes of a WAV file, written by the library `wavefile`; integers are rounded and clipped. */
export function wavBytes(
  channels: readonly Float64Array[],
  depth: BitDepth = '24',
  rate = sampleRateHz,
): Uint8Array {
  const full = depth === '32f' ? undefined : 2 ** (Number(depth) - 1);
  const coded = channels.map((samples) =>
    full === undefined
      ? samples
      : samples.map((sample) => Math.max(-full, Math.min(full - 1, Math.round(sample * full)))),
  );
  const wav = new wavefile.WaveFile();
  wav.fromScratch(channels.length, rate, depth, channels.length === 1 ? (coded[0] ?? []) : coded);
  return wav.toBuffer();
}
