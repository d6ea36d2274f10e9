/** A recording of a steady tone → level, harmonics, THD, THD+N and whether it is clipped; or why it cannot be. */
import { thdOfFundamental } from '../distortion.ts';
import { formatHz } from '../format.ts';
import { withoutOffset } from './activity.ts';
import { type Clipping, findClipping } from './clipping.ts';
import { clearOfNoise, type NoisyRatio, rated } from './noisy-ratio.ts';
import { phasorAt } from './phasor.ts';
import { ResidueSpectrum } from './residue-spectrum.ts';
import { mostSignalToNoiseDb, refuseNoise, refuseSampleRate, refuseSilence } from './signal-checks.ts';
import { fitSine, frequencyOf, subtractSine } from './sine-fit.ts';
import { blockLength, steadyPart } from './steady-part.ts';
import type { Tone } from './stimulus.ts';
import { noTone, otherStimulus, refuseLength, refuseSweep, refuseUnsteady } from './tone-refusals.ts';
import type { Recording } from './wav.ts';
import { flatTop, noiseBandwidthBins, sum, sumOfSquares } from './windows.ts';

export interface ToneMeasurement {
  /** The tone's frequency as recorded, by the interface's clock. */
  readonly hz: number;
  /** Amplitude of the fundamental, full scale = 1. */
  readonly amplitude: number;
  /** Root mean square of all within the band, what a true-rms meter reads, full scale = 1. */
  readonly rms: number;
  /** The harmonics within the band, from the second on. */
  readonly harmonics: readonly ToneHarmonic[];
  /** THD_F; undefined where no harmonic lies within the band. */
  readonly thd: (NoisyRatio & { readonly upToOrder: number }) | undefined;
  /** THD+N relative to the whole, as an analyser with a notch reads it (AES17; IEC 60268-3). */
  readonly thdPlusNoise: number;
  /** What THD+N was taken over, hertz. */
  readonly bandHz: readonly [number, number];
  readonly signalToNoiseDb: number;
  readonly clipping: Clipping;
}

export interface ToneHarmonic extends NoisyRatio {
  readonly order: number;
}

/** THD and THD+N are taken over the audio band (AES17: 20 kHz low-pass). */
const audioBandHz = [20, 20_000] as const;
/** The frequency may be off by so much: two clocks, and a player that resamples. */
const hzTolerance = 0.01;

/**
 * Measures a recording of a tone. A clipped one is measured too, and said to be.
 * @throws UnusableRecording where it cannot be measured.
 */
export function analyseTone(recording: Recording, tone: Tone): ToneMeasurement {
  const { sampleRateHz } = recording;
  refuseSampleRate(tone.hz, sampleRateHz, 'tone');
  refuseLength(recording);
  const whole = withoutOffset(recording.samples);
  refuseSilence(whole);
  refuseSweep(whole, sampleRateHz, tone);
  const samples = steadyPart(whole, sampleRateHz, tone.hz);
  const hz = frequencyOf(samples, sampleRateHz);
  const fundamental = fitSine(samples, hz / sampleRateHz);
  const signalPower = fundamental.amplitude ** 2 / 2;
  const isTone = signalPower > sumOfSquares(samples) / samples.length / 2;
  if (!isTone) throw noTone(tone);
  if (Math.abs(hz / tone.hz - 1) > hzTolerance) throw otherStimulus(`a tone of ${formatHz(hz)}`, tone);
  refuseUnsteady(samples, blockLength(sampleRateHz, hz));

  const bandHz = [audioBandHz[0], Math.min(audioBandHz[1], sampleRateHz / 2)] as const;
  const residue = subtractSine(samples, fundamental, hz / sampleRateHz);
  const noise = new ResidueSpectrum(residue, sampleRateHz);
  const residuePower = noise.powerWithin(bandHz, hz);

  const harmonics = harmonicsOf(residue, noise, { hz, sampleRateHz, mostHz: bandHz[1] });
  const harmonicPower = harmonics.reduce((total, one) => total + one.amplitude ** 2 / 2, 0);
  const noisePower = Math.max(residuePower - harmonicPower, residuePower * 1e-6, signalPower * 1e-20);
  const signalToNoiseDb = Math.min(mostSignalToNoiseDb, 10 * Math.log10(signalPower / noisePower));
  refuseNoise(signalToNoiseDb);

  return {
    hz,
    amplitude: fundamental.amplitude,
    rms: Math.sqrt(signalPower + residuePower),
    harmonics: harmonics.map(({ order, amplitude, noiseAmplitude }) => ({
      order,
      ...rated({ ratio: amplitude / fundamental.amplitude, noise: noiseAmplitude / fundamental.amplitude }),
    })),
    thd: thdOf(harmonics, fundamental.amplitude),
    thdPlusNoise: Math.sqrt(residuePower / (signalPower + residuePower)),
    bandHz,
    signalToNoiseDb,
    clipping: findClipping(recording.samples),
  };
}

interface Harmonic {
  readonly order: number;
  readonly amplitude: number;
  /** What noise alone would read as there. */
  readonly noiseAmplitude: number;
}

function harmonicsOf(
  residue: Float64Array,
  noise: ResidueSpectrum,
  {
    hz,
    sampleRateHz,
    mostHz,
  }: { readonly hz: number; readonly sampleRateHz: number; readonly mostHz: number },
): Harmonic[] {
  const window = flatTop(residue.length);
  // A tone's amplitude is 2·|X|/(N·coherent gain), and N·coherent gain is the window's sum.
  const scale = 2 / sum(window);
  const noiseBandwidthHz = (noiseBandwidthBins(window) * sampleRateHz) / window.length;
  const harmonics: Harmonic[] = [];
  for (let order = 2; order * hz <= mostHz && order * hz < sampleRateHz / 2; order += 1) {
    const { re, im } = phasorAt(residue, 0, window, (order * hz) / sampleRateHz);
    harmonics.push({
      order,
      amplitude: scale * Math.hypot(re, im),
      noiseAmplitude: Math.sqrt(2 * noise.densityNear(order * hz) * noiseBandwidthHz),
    });
  }
  return harmonics;
}

function thdOf(harmonics: readonly Harmonic[], fundamental: number): ToneMeasurement['thd'] {
  const upToOrder = harmonics.at(-1)?.order;
  if (upToOrder === undefined) return undefined;
  // Harmonics that are lost in the noise would add up to a distortion of their own: leave them out.
  const clear = harmonics.filter((one) => one.amplitude >= clearOfNoise * one.noiseAmplitude);
  const amplitudes = clear.map((one) => one.amplitude);
  const lowest = harmonics.slice(0, 4).map((one) => one.noiseAmplitude);
  const ratio = thdOfFundamental(fundamental, amplitudes);
  return { ...rated({ ratio, noise: thdOfFundamental(fundamental, lowest) }), upToOrder };
}
