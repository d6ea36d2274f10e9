/** Where in a recording something plays, told from its level over time. */

/** A stretch of a recording, in samples; the end exclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The mean of a recording: what an interface with a DC offset adds to every sample. */
export function meanOf(samples: Float64Array): number {
  let total = 0;
  for (const sample of samples) total += sample;
  return samples.length === 0 ? 0 : total / samples.length;
}

/** A recording without its DC offset. */
export function withoutOffset(samples: Float64Array): Float64Array {
  const mean = meanOf(samples);
  return samples.map((sample) => sample - mean);
}

/** The rms of each block of `length` samples; an unfinished last block is left out. */
export function blockRms(samples: Float64Array, length: number): Float64Array {
  const blocks = new Float64Array(Math.floor(samples.length / length));
  for (let block = 0; block < blocks.length; block += 1) {
    let squares = 0;
    for (let n = block * length; n < (block + 1) * length; n += 1) squares += (samples[n] ?? 0) ** 2;
    blocks[block] = Math.sqrt(squares / length);
  }
  return blocks;
}

/** A block counts as playing from 40 dB below the loudest, or half-way (in dB) up from the noise. */
const quietest = 0.01;

/** The stretch from the first to the last block that plays; undefined where there is no block. */
export function playingStretch(samples: Float64Array, blockLength: number): Stretch | undefined {
  const blocks = blockRms(samples, blockLength);
  const sorted = Float64Array.from(blocks).sort();
  const loud = sorted[Math.floor(0.95 * (sorted.length - 1))] ?? 0;
  const quiet = sorted[Math.floor(0.02 * (sorted.length - 1))] ?? 0;
  if (loud === 0) return undefined;
  // Where even the quiet blocks are loud, everything plays.
  const threshold = quiet > loud / 2 ? 0 : Math.max(quietest * loud, Math.sqrt(quiet * loud));
  const first = blocks.findIndex((rms) => rms >= threshold);
  const last = blocks.findLastIndex((rms) => rms >= threshold);
  return { from: first * blockLength, to: (last + 1) * blockLength };
}
