/** What was played: an exponential sweep or a steady tone. */
import { formatHz } from '../format.ts';
import type { Sweep } from './exponential-sweep.ts';

/** A steady sine. */
export interface Tone {
  readonly kind: 'tone';
  readonly hz: number;
}

export type Stimulus = Sweep | Tone;

/** Shorter sweeps leave too little time between the harmonics. */
export const leastSweepSeconds = 1;
export const mostSweepSeconds = 30;

/** Frequencies a stimulus may have, hertz. */
export const stimulusRangeHz = [5, 96_000] as const;

/** What is wrong with a stimulus as typed, and what to type instead. */
export interface StimulusProblem {
  readonly kind: 'problem';
  readonly message: string;
  readonly help: string;
}

const examples = 'Write sweep:20:20000:10 (from hertz, to hertz, seconds) or tone:1000 (hertz).';

/** Reads `sweep:20:20000:10` (hertz, hertz, seconds) or `tone:1000` (hertz). */
export function parseStimulus(text: string): Stimulus | StimulusProblem {
  const [kind, ...numbers] = text.trim().split(':');
  const values = numbers.map((number) => (/^\d+(\.\d+)?$/.test(number) ? Number(number) : Number.NaN));
  const [first = Number.NaN, second = Number.NaN, third = Number.NaN] = values;
  const problem = (message: string, help = examples): StimulusProblem => ({ kind: 'problem', message, help });
  const outOfRange = (hz: number): boolean => !(hz >= stimulusRangeHz[0] && hz <= stimulusRangeHz[1]);
  const range = `${stimulusRangeHz[0]} Hz to ${stimulusRangeHz[1] / 1000} kHz`;

  if (kind === 'tone' && values.length === 1) {
    if (outOfRange(first)) return problem(`“${text}” is no tone from ${range}.`);
    return { kind: 'tone', hz: first };
  }
  if (kind === 'sweep' && values.length === 3) {
    if (outOfRange(first) || outOfRange(second)) return problem(`“${text}” is no sweep within ${range}.`);
    if (!(third >= leastSweepSeconds && third <= mostSweepSeconds)) {
      return problem(
        `“${text}” is no sweep of ${leastSweepSeconds} to ${mostSweepSeconds} seconds.`,
        'The last number is the length in seconds; 10 is a good one.',
      );
    }
    // The response is told relative to 1 kHz, and the harmonics need room above it.
    if (!(first <= 500 && second >= 2000)) {
      return problem(
        `“${text}” does not rise from 500 Hz or below to 2 kHz or above.`,
        'Levels are told relative to 1 kHz, so the sweep has to pass it; 20 to 20000 is usual.',
      );
    }
    return { kind: 'sweep', fromHz: first, toHz: second, seconds: third };
  }
  return problem(`“${text}” is not a stimulus.`);
}

/** A stimulus in words: `sweep from 20 Hz to 20 kHz in 10 s`, `tone of 1 kHz`. */
export function describeStimulus(stimulus: Stimulus): string {
  return stimulus.kind === 'tone'
    ? `tone of ${formatHz(stimulus.hz)}`
    : `sweep from ${formatHz(stimulus.fromHz)} to ${formatHz(stimulus.toHz)} in ${formatSeconds(stimulus.seconds)}`;
}

/** Seconds to three significant digits: `10 s`, `0.25 s`. */
export function formatSeconds(seconds: number): string {
  return `${Number(seconds.toPrecision(3))} s`;
}
