/** A quick look at which outputs are certainly far apart, so that only the others are compared in full. */
import { type ComparedValues, leastTold } from './compare-outputs.ts';

/**
 * The uncertainty of a difference is at most the sum of the two; its coverage factor may be larger than either
 * where a large shared part cancels and a few repeats are left, at most twice (Student's t at few degrees of
 * freedom against the share such a part then has of the whole).
 */
const mostCoverage = 2;

/** The limit for any number of values that are compared in practice (1000) is below this. */
const mostLimit = 2.2;

/** Values of outputs side by side as numbers, quick to run through. */
export class FarApart {
  readonly #levels: readonly Float64Array[];
  readonly #widths: readonly Float64Array[];

  constructor(all: readonly ComparedValues[]) {
    const places = new Map<string, number>();
    for (const { values } of all) {
      for (const key of values.keys()) if (!places.has(key)) places.set(key, places.size);
    }
    this.#levels = all.map(({ values }) => {
      const levels = new Float64Array(places.size).fill(Number.NaN);
      for (const [key, { level }] of values) levels[places.get(key) ?? 0] = level.value;
      return levels;
    });
    this.#widths = all.map(({ values }) => {
      const widths = new Float64Array(places.size);
      for (const [key, { level }] of values)
        widths[places.get(key) ?? 0] = Math.max(level.expandedUncertainty, leastTold);
      return widths;
    });
  }

  /** True where outputs `a` and `b`, by their places in the list, are certainly further apart than `apart`. */
  isBeyond(a: number, b: number, apart: number): boolean {
    const [levelsA, levelsB] = [this.#levels[a], this.#levels[b]];
    const [widthsA, widthsB] = [this.#widths[a], this.#widths[b]];
    if (!levelsA || !levelsB || !widthsA || !widthsB) return false;
    const share = apart * mostLimit * mostCoverage;
    for (let at = 0; at < levelsA.length; at += 1) {
      const difference = Math.abs((levelsA[at] as number) - (levelsB[at] as number));
      // A value only one of them has is not a number, and compares false.
      if (difference > share * ((widthsA[at] as number) + (widthsB[at] as number))) return true;
    }
    return false;
  }
}
