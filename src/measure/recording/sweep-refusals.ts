/** What a recording of a sweep is refused for: its length, another stimulus, no sweep at all. */
import { formatHz } from '../format.ts';
import { growthSeconds, hzAtSeconds, type Sweep } from './exponential-sweep.ts';
import { recognise } from './recognise.ts';
import { mostSamples } from './signal-checks.ts';
import { describeStimulus, formatSeconds } from './stimulus.ts';
import type { SweepResponse } from './sweep-response.ts';
import { UnusableRecording } from './unusable.ts';

/** So much of the sweep has to be in the recording. */
const leastShare = 0.9;
/** The rate of rise may differ by this much before the stimulus is called another. */
const growthTolerance = 0.006;
const partGrowthTolerance = 0.05;
/** Noise alone peaks at five to six times its rms, a sweep 20 dB below the noise at some twenty times. */
const leastDistinctness = 12;

const recordAround = 'Start the recording a second before the sweep and stop it a second after.';

/** @throws UnusableRecording where it is longer than can be worked on. */
export function refuseLength(length: number, sampleRateHz: number, sweep: Sweep): void {
  const most = mostSamples - Math.ceil(sweep.seconds * sampleRateHz);
  if (length <= most) return;
  throw new UnusableRecording(
    'too-long',
    `The recording is ${formatSeconds(length / sampleRateHz)} long; with this sweep at this sample rate ${formatSeconds(Math.max(0, most / sampleRateHz))} is the most.`,
    'Cut it to the sweep and a second before and after, or record at a lower sample rate.',
  );
}

/** @throws UnusableRecording where it is shorter than the sweep. */
export function refuseShort(length: number, sampleRateHz: number, sweep: Sweep): void {
  const seconds = length / sampleRateHz;
  if (seconds >= leastShare * sweep.seconds) return;
  throw new UnusableRecording(
    'too-short',
    `The recording is too short: ${formatSeconds(seconds)}, and the sweep takes ${formatSeconds(sweep.seconds)}.`,
    recordAround,
  );
}

/**
 * Looks at the recording itself: a tone, or a sweep that rises at another rate, is another stimulus.
 * @throws UnusableRecording where it is.
 */
export function refuseOtherStimulus(samples: Float64Array, sampleRateHz: number, sweep: Sweep): void {
  const found = recognise(samples, sampleRateHz);
  const refuse = (what: string, help: string): never => {
    throw new UnusableRecording(
      'wrong-stimulus',
      `The recording holds ${what}, not the ${describeStimulus(sweep)} that was named.`,
      help,
    );
  };
  if (found.kind === 'tone') {
    refuse(
      `a steady tone of about ${formatHz(found.hz)}`,
      `Name it as it was played, --stimulus tone:${Math.round(found.hz)}, or give the file of the sweep.`,
    );
  }
  if (found.kind === 'linear-sweep') {
    refuse(
      'a sweep that rises by equal hertz, a linear one',
      'Play an exponential (logarithmic) sweep: it rises by equal octaves in equal times.',
    );
  }
  if (found.kind !== 'sweep') return;
  const rises = found.toHz > found.fromHz;
  const growth = found.seconds / Math.log(found.toHz / found.fromHz);
  // Of a part the rate is told less exactly, and a part is refused as too short in any case.
  const isPart = samples.length < leastShare * sweep.seconds * sampleRateHz;
  const tolerance = isPart ? partGrowthTolerance : growthTolerance;
  if (rises && Math.abs(growth / growthSeconds(sweep) - 1) <= tolerance) return;
  const ends = `${formatHz(found.fromHz)} to ${formatHz(found.toHz)} in ${formatSeconds(found.seconds)}`;
  refuse(
    `a sweep from about ${ends}`,
    rises
      ? 'Name the sweep as it was played (--stimulus sweep:FROM:TO:SECONDS), or give the right file.'
      : 'Play a sweep that rises.',
  );
}

/**
 * An impulse response without a peak is that of something else, or of noise.
 * @throws UnusableRecording where it has none.
 */
export function refuseIndistinct({ sweep, distinctness }: SweepResponse): void {
  if (distinctness >= leastDistinctness) return;
  throw new UnusableRecording(
    'wrong-stimulus',
    `No ${describeStimulus(sweep)} stands out in the recording.`,
    'Check that the right file is named and how the sweep was played. If both are right, the noise is too high: look for a loose lead or an open input.',
  );
}

/** @throws UnusableRecording where the recording began late or ended early. */
export function refusePart({ sweep, sampleRateHz, start }: SweepResponse, length: number): void {
  const from = Math.max(0, -start / sampleRateHz);
  const to = Math.min(sweep.seconds, (length - start) / sampleRateHz);
  if (to - from >= leastShare * sweep.seconds) return;
  throw new UnusableRecording(
    'too-short',
    `The recording is too short: it holds ${formatSeconds(Math.max(0, to - from))} of the sweep’s ${formatSeconds(sweep.seconds)}, from ${formatHz(hzAtSeconds(sweep, from))} to ${formatHz(hzAtSeconds(sweep, Math.max(from, to)))}.`,
    recordAround,
  );
}
