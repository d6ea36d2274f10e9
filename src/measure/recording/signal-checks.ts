/** What sweeps and tones are both refused for: silence, clipping, noise, a sample rate that cannot hold them. */
import { formatHz, formatNumber } from '../format.ts';
import { ratioDb } from '../level.ts';
import { type Clipping, findClipping } from './clipping.ts';
import { UnusableRecording } from './unusable.ts';

/** Peaks below this, −80 dB of full scale, are the interface's own noise. */
const leastPeak = 1e-4;

/** Longer recordings would need more memory than a workshop computer has. */
export const mostSamples = 2 ** 23;

/** @throws UnusableRecording where nothing was recorded. */
export function refuseSilence(samples: Float64Array): void {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  if (peak >= leastPeak) return;
  throw new UnusableRecording(
    'silent',
    peak === 0
      ? 'The recording is silent.'
      : `The recording is all but silent: its peaks reach ${formatNumber(ratioDb(peak), 0)} dBFS.`,
    'Check the lead from the load to the interface, the input chosen and its gain.',
  );
}

/** @throws UnusableRecording where a frequency cannot be in a recording of this sample rate. */
export function refuseSampleRate(highestHz: number, sampleRateHz: number, what: string): void {
  if (highestHz < sampleRateHz / 2) return;
  const needed = [44_100, 48_000, 96_000, 192_000].find((rate) => rate > 2 * highestHz);
  throw new UnusableRecording(
    'sample-rate',
    `The sample rate of ${sampleRateHz / 1000} kHz is too low: it holds frequencies below ${formatHz(sampleRateHz / 2)}, and the ${what} reaches ${formatHz(highestHz)}.`,
    needed
      ? `Record at ${needed / 1000} kHz or more. Converting this file does not help.`
      : `Play a ${what} that stays below ${formatHz(sampleRateHz / 2)}.`,
  );
}

/** Why a clipped recording is no measurement, and what to do. */
export const clippedMessage = 'The recording is clipped';
export const clippedHelp =
  'Turn the input of the interface down, not the unit, and record again with peaks at −6 dBFS or so.';

/** @throws UnusableRecording where the recording is clipped. */
export function refuseClipping(samples: Float64Array): void {
  const clipping = findClipping(samples);
  if (!clipping.clipped) return;
  throw new UnusableRecording('clipped', `${clippedWords(clipping)}.`, clippedHelp);
}

/** `The recording is clipped: 120 peaks are cut flat at −0.0 dBFS`. */
export function clippedWords({ flatTops, peak }: Clipping): string {
  const level = `${formatNumber(ratioDb(peak), 1)} dBFS`;
  return flatTops > 0
    ? `${clippedMessage}: ${flatTops} peaks are cut flat at ${level}`
    : `${clippedMessage}: its samples stand at the limit, ${level}`;
}

/** Less than this above the noise and a recording is refused: its figures would be those of the noise. */
const leastSignalToNoiseDb = 20;
/** More than this many decibels above noise are not told: the arithmetic's own limit. */
export const mostSignalToNoiseDb = 200;

/** @throws UnusableRecording where the noise is too high, with what was found. */
export function refuseNoise(signalToNoiseDb: number): void {
  if (signalToNoiseDb >= leastSignalToNoiseDb) return;
  throw new UnusableRecording(
    'noise',
    `The noise is too high (signal-to-noise ratio ${formatNumber(signalToNoiseDb, 0)} dB, at least ${leastSignalToNoiseDb} dB needed).`,
    'Raise the level into the interface short of clipping, and look for hum, a loose lead or an open input.',
  );
}
