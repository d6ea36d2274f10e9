/** Level, harmonics and noise over frequency, read off the impulse response of a sweep recording. */
import { Deconvolver, meanPower } from './deconvolution.ts';
import {
  harmonicLeadSeconds,
  harmonicSamples,
  hzAtSeconds,
  type Sweep,
  secondsAtHz,
} from './exponential-sweep.ts';
import { magnitudeAt } from './phasor.ts';
import { gate, hann, sumOfSquares } from './windows.ts';

/** Harmonics up to this order are told apart. */
export const highestOrder = 5;

/** How much of the way to its neighbours the gate around a harmonic takes: it rings on more than before. */
const gateShare = { before: 0.35, after: 0.6 } as const;
/** The gate around the linear response: two thirds of the way to the second harmonic, three times as long after. */
const linearShare = 0.65;
const mostLinearSecondsBefore = 0.25;
const linearAfter = 3;

/** The window noise is read through: a tenth of the sweep, a quarter of a second at most. */
const noiseShare = 0.1;
const mostNoiseSeconds = 0.25;

/** Levels this near, as a ratio, to where the recording began or ended during the sweep are not whole. */
const nearCut = 1.1;

/** A stretch of the impulse response around one harmonic, in samples from the sweep's start. */
interface Gate {
  readonly at: number;
  readonly before: number;
  readonly window: Float64Array;
  /** Σw² of the window: how much noise it lets in. */
  readonly energy: number;
}

/**
 * Reads a recording of a sweep. Every reading is the ratio of the gated response of the recording to that of
 * an ideal one of the same sweep, placed and cut alike and passed through the same steps: what gates and
 * band limits do to the readings near the ends of the sweep cancels.
 */
export class SweepResponse {
  readonly sweep: Sweep;
  readonly sampleRateHz: number;
  /** Where the sweep begins in the recording, samples; negative where the recording began later. */
  readonly start: number;
  readonly #length: number;
  readonly #response: Float64Array;
  /** The ideal response of each order alone, cut to its gate, so that none leaks into the gate of another. */
  readonly #ideals: readonly Float64Array[];
  /** The ideal linear response cut to the gate of each order: what leaks there. */
  readonly #idealLinear: readonly Float64Array[];
  readonly #gates: readonly Gate[];
  readonly #noiseWindow: Float64Array;
  readonly #noiseEnergy: number;
  /** What {@link #noisePower} has found, by frequency. */
  readonly #noisePowers = new Map<number, number>();

  /** `samples` without offset, full scale = 1. */
  constructor(samples: Float64Array, sampleRateHz: number, sweep: Sweep) {
    this.sweep = sweep;
    this.sampleRateHz = sampleRateHz;
    this.#length = samples.length;
    const deconvolver = new Deconvolver(sweep, sampleRateHz, samples.length);
    this.#response = deconvolver.impulseResponse(samples);
    this.start = peakPosition(this.#response, samples.length);
    this.#gates = gatesOf(sweep, sampleRateHz);
    const wanted = { sampleRateHz, start: this.start, length: samples.length };
    const ideals = this.#gates.map((own, index) => {
      const order = index + 1;
      const ideal = deconvolver.impulseResponse(harmonicSamples(sweep, { ...wanted, order }));
      const linearIn = order === 1 ? this.#gates.map((one) => this.#part(ideal, one)) : [];
      return { own: this.#part(ideal, own), linearIn };
    });
    this.#ideals = ideals.map(({ own }) => own);
    this.#idealLinear = ideals[0]?.linearIn ?? [];
    this.#noiseWindow = hann(
      Math.round(Math.min(mostNoiseSeconds, noiseShare * sweep.seconds) * sampleRateHz),
    );
    this.#noiseEnergy = sumOfSquares(this.#noiseWindow);
  }

  /** The range whose levels were recorded whole, hertz: less than the sweep's where the recording cut into it. */
  get recordedHz(): readonly [fromHz: number, toHz: number] {
    const { sweep, sampleRateHz, start } = this;
    const left = (this.#length - start) / sampleRateHz;
    return [
      start < 0 ? nearCut * hzAtSeconds(sweep, -start / sampleRateHz) : sweep.fromHz,
      left < sweep.seconds ? hzAtSeconds(sweep, left) / nearCut : sweep.toHz,
    ];
  }

  /** The amplitude of the fundamental at a frequency, full scale = 1. */
  fundamental(hz: number): number {
    return this.#reading(1, hz);
  }

  /** The amplitude of harmonic `order` while the sweep passes `hz`, full scale = 1. */
  harmonic(order: number, hz: number): number {
    return this.#reading(order, order * hz);
  }

  #reading(order: number, hz: number): number {
    const one = this.#gates[order - 1];
    if (!one) return Number.NaN;
    const turns = hz / this.sampleRateHz;
    const magnitude = magnitudeAt(this.#response, this.start + one.at - one.before, one.window, turns);
    return magnitude / this.#magnitude(this.#ideals, order, hz);
  }

  /** The part of a response that lies in a gate. */
  #part(response: Float64Array, { at, before, window }: Gate): Float64Array {
    const from = this.start + at - before + response.length;
    return window.map((_, n) => response[(from + n) % response.length] ?? 0);
  }

  #magnitude(parts: readonly Float64Array[], order: number, hz: number): number {
    const part = parts[order - 1];
    const one = this.#gates[order - 1];
    return part && one ? magnitudeAt(part, 0, one.window, hz / this.sampleRateHz) : Number.NaN;
  }

  /**
   * What harmonic `order` would read as without any distortion, at amplitude: noise, and what the gate
   * lets in of the linear response, which spreads most where the recording cuts into the sweep.
   */
  harmonicFloor(order: number, hz: number): number {
    const leak =
      this.#magnitude(this.#idealLinear, order, order * hz) /
      this.#magnitude(this.#ideals, order, order * hz);
    return Math.hypot(this.noise(order, order * hz), leak * this.fundamental(order * hz));
  }

  /** The amplitude that noise alone would read as, at a frequency, through the gate of `order`. */
  noise(order: number, hz: number): number {
    const one = this.#gates[order - 1];
    if (!one) return Number.NaN;
    const power = this.#noisePower(hz) * one.energy;
    return Math.sqrt(power) / this.#magnitude(this.#ideals, order, hz);
  }

  /** The density of the noise in the recording at a frequency, mean square per hertz, full scale = 1. */
  noiseDensity(hz: number): number {
    return (2 * this.#noisePower(hz) * meanPower(this.sweep, this.sampleRateHz, hz)) / this.sampleRateHz;
  }

  /** How far the highest peak of the impulse response stands out of the whole, as a ratio to its rms. */
  get distinctness(): number {
    const rms = Math.sqrt(sumOfSquares(this.#response) / this.#response.length);
    return Math.abs(this.#response.at(this.start) ?? 0) / rms;
  }

  /** The noise in the impulse response at a frequency: |Σ w·h·e^(−jωn)|² over Σw², the median of some places. */
  #noisePower(hz: number): number {
    const known = this.#noisePowers.get(hz);
    if (known !== undefined) return known;
    const window = this.#noiseWindow;
    const powers = this.#noisePlaces(hz).map(
      (at) => magnitudeAt(this.#response, this.start + at, window, hz / this.sampleRateHz) ** 2,
    );
    const power = medianOfExponential(powers) / this.#noiseEnergy;
    this.#noisePowers.set(hz, power);
    return power;
  }

  /**
   * Where to look for noise, as beginnings of its window in samples from the sweep's start. A place s holds
   * what the recording had at `hz` at the instant s after the sweep passed it, and it has to have been
   * recording then: before the sweep began, or so long after it passed that nothing rings any more. Only
   * where it never was, places between are taken, which hold the traces of high harmonics too.
   */
  #noisePlaces(hz: number): number[] {
    const fs = this.sampleRateHz;
    const length = this.#noiseWindow.length;
    const passed = this.start + Math.round(secondsAtHz(this.sweep, hz) * fs);
    const earliest = -passed;
    const latest = this.#length - passed - length;
    const rung = this.#gates[0]?.window.length ?? 0;
    const clean = [
      ...spaced(earliest, this.start - passed - length),
      ...spaced(Math.max(earliest, rung), latest),
    ];
    const lead = Math.round(harmonicLeadSeconds(this.sweep, highestOrder + 1) * fs);
    return clean.length > 0 ? clean : spaced(earliest, Math.min(latest, -lead - length));
  }
}

/** Nine places spread evenly between two ends; none where they are the wrong way round. */
function spaced(from: number, to: number): number[] {
  if (to < from) return [];
  return Array.from({ length: 9 }, (_, i) => Math.round(from + ((to - from) * i) / 8));
}

/** The highest magnitude of the response, as a place in the recording: periodic, so the far end is negative. */
function peakPosition(response: Float64Array, length: number): number {
  let best = 0;
  for (let n = 1; n < response.length; n += 1) {
    if (Math.abs(response[n] ?? 0) > Math.abs(response[best] ?? 0)) best = n;
  }
  return best < length ? best : best - response.length;
}

function gatesOf(sweep: Sweep, sampleRateHz: number): Gate[] {
  const lead = (order: number): number => harmonicLeadSeconds(sweep, order) * sampleRateHz;
  const linearBefore = Math.round(Math.min(linearShare * lead(2), mostLinearSecondsBefore * sampleRateHz));
  const harmonics = Array.from({ length: highestOrder - 1 }, (_, index) => {
    const order = index + 2;
    const before = Math.round(gateShare.before * (lead(order + 1) - lead(order)));
    const after = Math.round(gateShare.after * (lead(order) - lead(order - 1)));
    return gateAt(-Math.round(lead(order)), before, after);
  });
  return [gateAt(0, linearBefore, linearAfter * linearBefore), ...harmonics];
}

function gateAt(at: number, before: number, after: number): Gate {
  const window = gate(before, after);
  return { at, before, window, energy: sumOfSquares(window) };
}

/**
 * The mean of powers that scatter exponentially, as those of noise do, told by their median so that a stray
 * click does not count: the median of m such values is about ln 2 + 1/(2m) times their mean. 0 for none.
 */
function medianOfExponential(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[sorted.length >> 1] ?? 0) / (Math.LN2 + 1 / (2 * Math.max(1, sorted.length)));
}
