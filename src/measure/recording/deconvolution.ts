/**
 * From a recording of an exponential sweep to the impulse response of what it went through.
 *
 * The recording's spectrum is divided by the sweep's own (regularised), not multiplied by the time-reversed
 * sweep with its amplitude correction (Farina, AES 108, 2000). The spectrum of a sweep that starts and stops
 * at once ripples by a decibel near both ends and is 6 dB down at them; the time-reversed filter does
 * likewise, so the product shows it twice (up to 2 dB at 25 Hz of 20 Hz to 20 kHz in 10 s), where the
 * division leaves 0.001 dB. The harmonics fall apart in either case, because sin nφ(t) is the sweep
 * itself, earlier by L·ln n, but for a constant phase.
 */
import { growthSeconds, type Sweep, sweepSamples } from './exponential-sweep.ts';
import { powerOfTwoAtLeast, RealTransform, type Spectrum } from './fft.ts';

/** Regularisation: this fraction of the sweep's mean power at a frequency is added to the divisor. */
const regularisation = 1e-4;

/** Beyond its ends the sweep has little power and the division would show noise: fade out this far. */
const fadeBelow = 0.8;
const fadeAbove = 1.1;

/** Deconvolves recordings up to a given length by one sweep. */
export class Deconvolver {
  readonly sweep: Sweep;
  readonly sampleRateHz: number;
  readonly #transform: RealTransform;
  readonly #inverse: Spectrum;

  constructor(sweep: Sweep, sampleRateHz: number, longest: number) {
    this.sweep = sweep;
    this.sampleRateHz = sampleRateHz;
    const stimulus = sweepSamples(sweep, sampleRateHz);
    // Long enough for the linear convolution: nothing wraps round into another harmonic's place.
    this.#transform = new RealTransform(powerOfTwoAtLeast(longest + stimulus.length));
    this.#inverse = inverseSpectrum(this.#transform.forward(stimulus), sweep, sampleRateHz);
  }

  /**
   * The impulse response: index n holds the response n samples after the recording's first sample would
   * have met the sweep's; times before that are at the far end of the array, which is periodic.
   */
  impulseResponse(recording: Float64Array): Float64Array {
    const spectrum = this.#transform.forward(recording);
    const inverse = this.#inverse;
    for (let k = 0; k < spectrum.length; k += 2) {
      const re = spectrum[k] ?? 0;
      const im = spectrum[k + 1] ?? 0;
      const inverseRe = inverse[k] ?? 0;
      const inverseIm = inverse[k + 1] ?? 0;
      spectrum[k] = re * inverseRe - im * inverseIm;
      spectrum[k + 1] = re * inverseIm + im * inverseRe;
    }
    return this.#transform.inverse(spectrum);
  }
}

/** B·conj(X)/(|X|² + ε), the regularised inverse, band-limited by B to the sweep's range. Overwrites X. */
function inverseSpectrum(spectrum: Spectrum, sweep: Sweep, sampleRateHz: number): Spectrum {
  const size = spectrum.length - 2;
  for (let k = 0; k < spectrum.length; k += 2) {
    const hz = ((k / 2) * sampleRateHz) / size;
    const re = spectrum[k] ?? 0;
    const im = spectrum[k + 1] ?? 0;
    const divisor = re * re + im * im + regularisation * meanPower(sweep, sampleRateHz, Math.max(hz, 1));
    const scale = band(sweep, sampleRateHz, hz) / divisor;
    spectrum[k] = re * scale;
    spectrum[k + 1] = -im * scale;
  }
  return spectrum;
}

/** |X(f)|² of a sweep at full scale without its ripple, fs²·L/(4f): the stationary-phase approximation. */
export function meanPower(sweep: Sweep, sampleRateHz: number, hz: number): number {
  return (sampleRateHz ** 2 * growthSeconds(sweep)) / (4 * hz);
}

/** 1 between the ends of the sweep, falling to 0 beyond as half a Hann window over the logarithm of frequency. */
function band({ fromHz, toHz }: Sweep, sampleRateHz: number, hz: number): number {
  if (hz >= fromHz && hz <= toHz) return 1;
  if (hz <= 0) return 0;
  const limitHz = hz < fromHz ? fromHz * fadeBelow : Math.min(toHz * fadeAbove, sampleRateHz / 2);
  const endHz = hz < fromHz ? fromHz : toHz;
  const outward = Math.min(1, Math.log(hz / endHz) / Math.log(limitHz / endHz));
  return 0.5 + 0.5 * Math.cos(Math.PI * outward);
}
