/**
 * Whether a sweep that rises at the right rate has other ends than named, told by the recording's level at
 * the times it should pass each frequency. A sweep that starts late or stops early drops off a cliff; no
 * unit's filter is as steep, except at the top, where coded sound is cut off: there a cliff counts only
 * half an octave or more below the end. A sweep that goes on beyond its ends plays before or after them.
 */
import { formatHz } from '../format.ts';
import { growthSeconds, secondsAtHz } from './exponential-sweep.ts';
import { describeStimulus } from './stimulus.ts';
import type { SweepResponse } from './sweep-response.ts';
import { UnusableRecording } from './unusable.ts';

/** Levels are told this many times per octave; a cliff takes two of them, a third of an octave. */
const perOctave = 6;
const cliffWidth = 2;
/** 18 dB within a third of an octave: 54 dB an octave. */
const cliff = 10 ** (18 / 20);
/** As ratios to the ends named, where a cliff is another end. */
const nearStart = 1.12;
const nearEnd = Math.SQRT2;
/** Before its start and after its end a sweep plays on if the level there is within 14 dB of its own. */
const playsOn = 0.2;

/** @throws UnusableRecording where the ends are others. `samples` without offset. */
export function refuseOtherEnds(response: SweepResponse, samples: Float64Array): void {
  const { sweep, sampleRateHz, start } = response;
  const refuse = (what: string): never => {
    throw new UnusableRecording(
      'wrong-stimulus',
      `The sweep in the recording ${what}; the ${describeStimulus(sweep)} that was named does not.`,
      'Name the sweep as it was played (--stimulus sweep:FROM:TO:SECONDS), or give the right file.',
    );
  };
  const [fromHz, toHz] = response.recordedHz;
  const startHz = cliffAt(levelsOf(response, samples, 'start'));
  if (startHz !== undefined && startHz > nearStart * fromHz) refuse(`begins at about ${formatHz(startHz)}`);
  const endHz = cliffAt(levelsOf(response, samples, 'end'));
  if (endHz !== undefined && endHz < toHz / nearEnd) refuse(`ends at about ${formatHz(endHz)}`);

  const end = start + Math.round(sweep.seconds * sampleRateHz);
  const halfOctave = Math.round((growthSeconds(sweep) * Math.LN2 * sampleRateHz) / 2);
  const whole = rmsBetween(samples, start, end);
  if (rmsBetween(samples, start - halfOctave, start) > playsOn * whole)
    refuse(`begins below ${formatHz(sweep.fromHz)}`);
  if (rmsBetween(samples, end, end + halfOctave) > playsOn * whole)
    refuse(`goes on above ${formatHz(sweep.toHz)}`);
}

interface Level {
  readonly hz: number;
  readonly rms: number;
}

/**
 * The recording's rms while the sweep passes each sixth of an octave, over a period and a half at least,
 * going inwards from one end.
 */
function levelsOf(response: SweepResponse, samples: Float64Array, from: 'start' | 'end'): Level[] {
  const { sweep, sampleRateHz, start } = response;
  const [fromHz, toHz] = response.recordedHz;
  const count = Math.floor(perOctave * Math.log2(toHz / fromHz));
  return Array.from({ length: count }, (_, i) => {
    const inwards = 2 ** ((i + 0.5) / perOctave);
    const hz = from === 'start' ? fromHz * inwards : toHz / inwards;
    const half = Math.max((growthSeconds(sweep) * Math.LN2) / perOctave, 1.5 / hz) / 2;
    const at = start + secondsAtHz(sweep, hz) * sampleRateHz;
    const first = Math.round(Math.max(start, at - half * sampleRateHz));
    return { hz, rms: rmsBetween(samples, first, first + Math.round(2 * half * sampleRateHz)) };
  });
}

/** The frequency, going inwards, where the level stands on top of a cliff; undefined where there is none. */
function cliffAt(levels: readonly Level[]): number | undefined {
  let highestBelow = 0;
  for (let i = cliffWidth; i < levels.length / 2; i += 1) {
    highestBelow = Math.max(highestBelow, levels[i - cliffWidth]?.rms ?? 0);
    const here = levels[i];
    const before = levels[i - 1];
    if (!here || !before || here.rms <= cliff * highestBelow) continue;
    return before.rms > here.rms / 2 ? before.hz : here.hz;
  }
  return undefined;
}

/** The rms of a stretch as far as it was recorded; 0 where less than half of it was. */
function rmsBetween(samples: Float64Array, from: number, to: number): number {
  const first = Math.max(0, from);
  const last = Math.min(samples.length, to);
  if (last - first < (to - from) / 2) return 0;
  let squares = 0;
  for (let n = first; n < last; n += 1) squares += (samples[n] ?? 0) ** 2;
  return Math.sqrt(squares / (last - first));
}
