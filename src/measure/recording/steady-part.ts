/** The part of a recording in which a tone plays steadily. */
import { formatHz } from '../format.ts';
import { playingStretch, type Stretch } from './activity.ts';
import { formatSeconds } from './stimulus.ts';
import { UnusableRecording } from './unusable.ts';

/** Flat-top lobes are ten bins wide; fewer periods and the harmonics run into each other. */
const leastPeriods = 24;
const leastSeconds = 0.25;
/** More than this is not needed: the middle of a longer recording is taken. */
const enoughSamples = 2 ** 17;
const enoughPeriods = 60;

/**
 * The middle of where the tone plays, a power of two long.
 * @throws UnusableRecording where it plays too short.
 */
export function steadyPart(samples: Float64Array, sampleRateHz: number, hz: number): Float64Array {
  const block = blockLength(sampleRateHz, hz);
  const playing = playingStretch(samples, block) ?? { from: 0, to: samples.length };
  // Switching on and off rings; a block at either end is not part of the steady tone.
  const inner: Stretch = { from: playing.from + block, to: playing.to - block };
  const needed = Math.max(leastSeconds, leastPeriods / hz);
  const length = inner.to - inner.from;
  if (length < needed * sampleRateHz) {
    throw new UnusableRecording(
      'too-short',
      `The recording is too short: the tone plays for ${formatSeconds(Math.max(0, length) / sampleRateHz)}, and at ${formatHz(hz)} at least ${formatSeconds(needed)} are needed.`,
      'Let the tone play for two seconds or more.',
    );
  }
  let size = 2;
  const enough = Math.max(enoughSamples, (enoughPeriods * sampleRateHz) / hz);
  while (2 * size <= length && size < enough) size *= 2;
  const from = inner.from + Math.floor((length - size) / 2);
  return samples.slice(from, from + size);
}

/** Samples in a block whose level is told: 20 ms, two periods at least, and whole ones, so that none counts for more. */
export function blockLength(sampleRateHz: number, hz: number): number {
  return Math.ceil((Math.max(2, Math.ceil(0.02 * hz)) * sampleRateHz) / hz);
}
