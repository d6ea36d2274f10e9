/** What a recording of a tone is refused for: its length, another stimulus, a level that changes. */
import { formatHz, formatNumber } from '../format.ts';
import { blockRms } from './activity.ts';
import { recognise } from './recognise.ts';
import { mostSamples } from './signal-checks.ts';
import { describeStimulus, formatSeconds, type Tone } from './stimulus.ts';
import { UnusableRecording } from './unusable.ts';
import type { Recording } from './wav.ts';

/** The level may change by so much, as a ratio, while the tone plays: 0.5 dB. */
const steadyWithin = 10 ** (0.5 / 20);

/** @throws UnusableRecording where it is longer than can be worked on. */
export function refuseLength({ samples, sampleRateHz }: Recording): void {
  if (samples.length <= mostSamples) return;
  throw new UnusableRecording(
    'too-long',
    `The recording is ${formatSeconds(samples.length / sampleRateHz)} long; ${formatSeconds(mostSamples / sampleRateHz)} is the most at this sample rate.`,
    'Cut it to some seconds of the tone.',
  );
}

/** @throws UnusableRecording where the recording itself shows a sweep. */
export function refuseSweep(samples: Float64Array, sampleRateHz: number, tone: Tone): void {
  const found = recognise(samples, sampleRateHz);
  if (found.kind === 'linear-sweep') throw otherStimulus('a sweep', tone);
  if (found.kind !== 'sweep') return;
  throw otherStimulus(
    `a sweep from about ${formatHz(found.fromHz)} to ${formatHz(found.toHz)} in ${formatSeconds(found.seconds)}`,
    tone,
  );
}

/** @throws UnusableRecording where the level changes while the tone plays. */
export function refuseUnsteady(samples: Float64Array, block: number): void {
  const levels = blockRms(samples, block);
  const loudest = Math.max(...levels);
  const quietest = Math.min(...levels);
  if (loudest <= steadyWithin * quietest) return;
  throw new UnusableRecording(
    'not-steady',
    `The level changes by ${formatNumber(20 * Math.log10(loudest / quietest), 1)} dB while the tone plays.`,
    'Record with the volume left alone, no fades, and after the unit has settled; a loose lead or much noise looks the same.',
  );
}

/** The refusal of a recording that holds something else than the tone named. */
export function otherStimulus(what: string, tone: Tone): UnusableRecording {
  return new UnusableRecording(
    'wrong-stimulus',
    `The recording holds ${what}, not the ${describeStimulus(tone)} that was named.`,
    'Name what was played (--stimulus tone:HERTZ or sweep:FROM:TO:SECONDS), or give the right file.',
  );
}

/** The refusal of a recording in which no tone is the strongest part. */
export function noTone(tone: Tone): UnusableRecording {
  return new UnusableRecording(
    'wrong-stimulus',
    `No steady tone stands out in the recording, let alone the ${describeStimulus(tone)} that was named.`,
    'Check that the right file is named; if it is, look for hum, a loose lead or an open input.',
  );
}
