/** The sine in a recording: its frequency, its amplitude, and the recording without it. */
import { RealTransform } from './fft.ts';
import { phasorAt } from './phasor.ts';
import { peakOf, powersOf } from './recognise.ts';
import { flatTop, hann, sum } from './windows.ts';

/**
 * The frequency of the strongest tone, hertz: the highest bin of a Hann-windowed transform, then the advance
 * of the phase between the two halves.
 */
export function frequencyOf(samples: Float64Array, sampleRateHz: number): number {
  const size = samples.length;
  const window = hann(size);
  const windowed = samples.map((sample, n) => sample * (window[n] ?? 0));
  let turns = peakOf(powersOf(new RealTransform(size).forward(windowed))).bin / size;
  const half = hann(size / 2);
  for (let round = 0; round < 3; round += 1) {
    const first = phasorAt(samples.subarray(0, size / 2), 0, half, turns);
    const second = phasorAt(samples.subarray(size / 2), 0, half, turns);
    const advance =
      Math.atan2(second.im, second.re) - Math.atan2(first.im, first.re) - Math.PI * turns * size;
    const excess = advance - 2 * Math.PI * Math.round(advance / (2 * Math.PI));
    turns += excess / (Math.PI * size);
  }
  return turns * sampleRateHz;
}

export interface Sine {
  readonly amplitude: number;
  readonly re: number;
  readonly im: number;
}

/** The sine at a frequency (in turns a sample), read through a flat-top window: x ≈ Re((re + j·im)·e^(j2πn·turns)). */
export function fitSine(samples: Float64Array, turns: number): Sine {
  const window = flatTop(samples.length);
  const { re, im } = phasorAt(samples, 0, window, turns);
  const scale = 2 / sum(window);
  return { amplitude: scale * Math.hypot(re, im), re: scale * re, im: scale * im };
}

/** The recording less the sine. */
export function subtractSine(samples: Float64Array, { re, im }: Sine, turns: number): Float64Array {
  return samples.map((sample, n) => {
    const angle = 2 * Math.PI * turns * n;
    return sample - (re * Math.cos(angle) - im * Math.sin(angle));
  });
}
