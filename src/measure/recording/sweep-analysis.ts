/** A recording of an exponential sweep → response, harmonics and THD over frequency; or why it cannot be. */
import { thdOfFundamental } from '../distortion.ts';
import { formatHz } from '../format.ts';
import { exactCentre, nearestBand } from '../third-octave.ts';
import { withoutOffset } from './activity.ts';
import type { Sweep } from './exponential-sweep.ts';
import { type NoisyRatio, rated } from './noisy-ratio.ts';
import {
  mostSignalToNoiseDb,
  refuseClipping,
  refuseNoise,
  refuseSampleRate,
  refuseSilence,
} from './signal-checks.ts';
import { refuseOtherEnds } from './sweep-ends.ts';
import {
  refuseIndistinct,
  refuseLength,
  refuseOtherStimulus,
  refusePart,
  refuseShort,
} from './sweep-refusals.ts';
import { highestOrder, SweepResponse } from './sweep-response.ts';
import { UnusableRecording } from './unusable.ts';
import type { Recording } from './wav.ts';

/** The fundamental at one frequency. */
export interface SweepLevel {
  readonly hz: number;
  /** Amplitude, full scale = 1. */
  readonly amplitude: number;
}

/** One harmonic while the sweep passes `hz`. */
export interface HarmonicRatio extends NoisyRatio {
  readonly hz: number;
  readonly order: number;
}

/** THD_F from the harmonics 2 to `upToOrder`, the highest that lies within the sweep's range. */
export interface ThdRatio extends NoisyRatio {
  readonly hz: number;
  readonly upToOrder: number;
}

export interface SweepMeasurement {
  readonly levels: readonly SweepLevel[];
  readonly distortion: readonly HarmonicRatio[];
  readonly thd: readonly ThdRatio[];
  /** The sweep's level above the noise within its range, both over the whole range, dB. */
  readonly signalToNoiseDb: number;
  /** Frequencies of the range for which no level is given, and why. */
  readonly leftOut: readonly { readonly hz: number; readonly reason: string }[];
  /** The amplitude at the frequency asked for, full scale = 1. */
  readonly amplitudeAtReference: number | undefined;
  /** Where the sweep begins in the recording, seconds; negative where the recording began later. */
  readonly startSeconds: number;
}

/** A level is given where it stands this far above the noise in its gate, as amplitudes: 20 dB. */
const leastLevelToNoise = 10;
/** Generators fade their sweeps in and out: within 3 % of an end, a drop of 1.5 dB from 6 % further in is doubtful. */
const veryEnd = 1.03;
const fadeDrop = 10 ** (-1.5 / 20);

/**
 * Measures a recording of `sweep` at the exact third-octave centres (IEC 61260-1) within its range, and at
 * the frequency its volts are known at, if there is one.
 * @throws UnusableRecording where it cannot be measured.
 */
export function analyseSweep(recording: Recording, sweep: Sweep, referenceHz?: number): SweepMeasurement {
  const { sampleRateHz } = recording;
  const samples = withoutOffset(recording.samples);
  refuseSampleRate(sweep.toHz, sampleRateHz, 'sweep');
  refuseLength(samples.length, sampleRateHz, sweep);
  refuseSilence(samples);
  refuseClipping(recording.samples);
  refuseOtherStimulus(samples, sampleRateHz, sweep);
  refuseShort(samples.length, sampleRateHz, sweep);

  const response = new SweepResponse(samples, sampleRateHz, sweep);
  refuseIndistinct(response);
  refusePart(response, samples.length);
  const signalToNoiseDb = signalToNoise(response);
  refuseNoise(signalToNoiseDb);
  refuseOtherEnds(response, samples);
  return {
    ...read(response),
    signalToNoiseDb,
    amplitudeAtReference: referenceHz === undefined ? undefined : amplitudeAt(response, referenceHz),
    startSeconds: response.start / sampleRateHz,
  };
}

/** The exact third-octave centres within a sweep's range. */
export function centresWithin({ fromHz, toHz }: Sweep): number[] {
  const centres: number[] = [];
  for (let k = nearestBand(fromHz) - 1; k <= nearestBand(toHz) + 1; k += 1) {
    const hz = exactCentre(k);
    if (hz >= fromHz && hz <= toHz) centres.push(hz);
  }
  return centres;
}

function read(response: SweepResponse): Pick<SweepMeasurement, 'levels' | 'distortion' | 'thd' | 'leftOut'> {
  const [fromHz, toHz] = response.recordedHz;
  const levels: SweepLevel[] = [];
  const distortion: HarmonicRatio[] = [];
  const thd: ThdRatio[] = [];
  const leftOut: { hz: number; reason: string }[] = [];
  for (const hz of centresWithin(response.sweep)) {
    if (hz < fromHz) leftOut.push({ hz, reason: 'the recording began later' });
    else if (hz > toHz) leftOut.push({ hz, reason: 'the recording ended before' });
    else {
      const amplitude = response.fundamental(hz);
      if (amplitude < leastLevelToNoise * response.noise(1, hz)) {
        leftOut.push({ hz, reason: 'too near the noise' });
      } else if (mayFade(response, hz, amplitude)) {
        leftOut.push({ hz, reason: 'a sweep that fades there looks the same' });
      } else {
        levels.push({ hz, amplitude });
        const harmonics = harmonicsAt(response, hz, amplitude);
        distortion.push(...harmonics.map(({ order, ...noisy }) => ({ hz, order, ...rated(noisy) })));
        const total = thdOf(harmonics);
        if (total) thd.push({ hz, ...total });
      }
    }
  }
  return { levels, distortion, thd, leftOut };
}

/** Whether a level at the very end of the sweep drops so that it may be the stimulus fading, not the unit. */
function mayFade(response: SweepResponse, hz: number, amplitude: number): boolean {
  const { fromHz, toHz } = response.sweep;
  const inwards = hz < fromHz * veryEnd ? veryEnd ** 2 : hz > toHz / veryEnd ? veryEnd ** -2 : undefined;
  return inwards !== undefined && amplitude < fadeDrop * response.fundamental(hz * inwards);
}

function amplitudeAt(response: SweepResponse, hz: number): number {
  const [fromHz, toHz] = response.recordedHz;
  const amplitude = response.fundamental(hz);
  if (hz >= fromHz && hz <= toHz && amplitude >= leastLevelToNoise * response.noise(1, hz)) return amplitude;
  throw new UnusableRecording(
    'noise',
    `The level at ${formatHz(hz)}, which the others are told by, cannot be read: the sweep does not stand out there.`,
    'Record the whole sweep, a second before and after it included, at a higher level.',
  );
}

interface Harmonic {
  readonly order: number;
  readonly ratio: number;
  readonly noise: number;
}

/** The harmonics that lie within the sweep's range, and what noise and the method alone would read as, relative to the fundamental. */
function harmonicsAt(response: SweepResponse, hz: number, fundamental: number): Harmonic[] {
  const harmonics: Harmonic[] = [];
  for (let order = 2; order <= highestOrder && order * hz <= response.sweep.toHz; order += 1) {
    harmonics.push({
      order,
      ratio: response.harmonic(order, hz) / fundamental,
      noise: response.harmonicFloor(order, hz) / fundamental,
    });
  }
  return harmonics;
}

/** THD_F; undefined without a third harmonic, as clipping alike on both sides makes no second one. */
function thdOf(harmonics: readonly Harmonic[]): (NoisyRatio & { upToOrder: number }) | undefined {
  const upToOrder = harmonics.at(-1)?.order ?? 1;
  if (upToOrder < 3) return undefined;
  // Each is a ratio to the fundamental already.
  const together = (ratios: readonly number[]): number => thdOfFundamental(1, ratios);
  const ratio = together(harmonics.map((one) => one.ratio));
  const noise = together(harmonics.map((one) => one.noise));
  return { ...rated({ ratio, noise }), upToOrder };
}

/** Both powers over the third-octaves that were recorded: the sweep spends the same time in each. */
function signalToNoise(response: SweepResponse): number {
  const [fromHz, toHz] = response.recordedHz;
  const centresHz = centresWithin({ ...response.sweep, fromHz, toHz });
  let signal = 0;
  let noise = 0;
  for (const hz of centresHz) {
    signal += response.fundamental(hz) ** 2 / 2 / centresHz.length;
    noise += response.noiseDensity(hz) * hz * (10 ** 0.05 - 10 ** -0.05);
  }
  return Math.min(mostSignalToNoiseDb, 10 * Math.log10(signal / noise));
}
