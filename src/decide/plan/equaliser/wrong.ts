/** What filters are fitted to: how far a response is off at each of its frequencies. */
import { bentRatio } from '../../../measure/index.ts';

/** Equalisers mostly run at this rate, hertz: common practice, no source. It matters in the top octave only. */
export const sampleRateHz = 48_000;

/** Frequencies at which curves are wanted, bent as the bilinear transform bends them: once, not for every filter. */
export interface Grid {
  readonly frequencies: readonly number[];
  readonly bent: readonly number[];
}

/** What is wrong at each frequency: how far the response is above the target, dB. Plain data, to be sent to a worker. */
export interface Wrong {
  readonly grid: Grid;
  readonly errorDb: readonly number[];
}

export function gridOf(frequencies: readonly number[]): Grid {
  return { frequencies, bent: frequencies.map(bentAt) };
}

/** Where a frequency lies once it is bent. */
export function bentAt(hz: number): number {
  return bentRatio(hz, sampleRateHz / 4, sampleRateHz);
}

/** Without its mean: the overall level is set by the volume, not by filters. */
export function levelled(values: readonly number[]): number[] {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return values.map((one) => one - mean);
}
