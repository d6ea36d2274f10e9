/** A quick look at where two outputs differ most, so that only near pairs are compared in full. */
import type { ComparedValues } from './compare-outputs.ts';
import { leastTold } from './compare-outputs.ts';

/** Values of outputs side by side as numbers, quick to run through. */
export class MostTelling {
  readonly #keys: readonly string[];
  readonly #levels: readonly Float64Array[];
  readonly #widths: readonly Float64Array[];

  constructor(all: readonly ComparedValues[]) {
    const places = new Map<string, number>();
    for (const { values } of all) {
      for (const key of values.keys()) if (!places.has(key)) places.set(key, places.size);
    }
    this.#keys = [...places.keys()];
    const numbers = (of: (value: number, expandedUncertainty: number) => number): Float64Array[] =>
      all.map(({ values }) => {
        // What an output has no value for is not a number, and compares false with everything.
        const column = new Float64Array(places.size).fill(Number.NaN);
        for (const [key, { level }] of values)
          column[places.get(key) ?? 0] = of(level.value, level.expandedUncertainty);
        return column;
      });
    this.#levels = numbers((value) => value);
    this.#widths = numbers((_, expandedUncertainty) => Math.max(expandedUncertainty, leastTold));
  }

  /**
   * The value by which outputs `a` and `b` (by their places in the list) differ most for their uncertainties,
   * and how many they have in common; undefined for none.
   */
  of(a: number, b: number): { key: string; compared: number } | undefined {
    const [levelsA, levelsB] = [this.#levels[a], this.#levels[b]];
    const [widthsA, widthsB] = [this.#widths[a], this.#widths[b]];
    if (!levelsA || !levelsB || !widthsA || !widthsB) return undefined;
    let [compared, most, at] = [0, -1, -1];
    for (let place = 0; place < levelsA.length; place += 1) {
      const difference = Math.abs((levelsA[place] as number) - (levelsB[place] as number));
      const ratio = difference / ((widthsA[place] as number) + (widthsB[place] as number));
      if (ratio >= 0) compared += 1;
      if (ratio > most) {
        most = ratio;
        at = place;
      }
    }
    const key = this.#keys[at];
    return key === undefined ? undefined : { key, compared };
  }
}
