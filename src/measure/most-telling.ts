/** A quick look at where two outputs differ most, so that only near pairs are compared in full. */
import { normalisedErrorLimit } from './agreement.ts';
import { type ComparedValues, leastTold } from './compare-outputs.ts';
import type { Quantity } from './quantity.ts';
import { coverageFactor } from './uncertainty.ts';

/** No result is covered by more times its standard uncertainty than one with a single degree of freedom. */
const mostCoverage = coverageFactor(1);

/** Values of outputs side by side as numbers, quick to run through. */
export class MostTelling {
  readonly #keys: readonly string[];
  readonly #rows: readonly Row[];
  readonly #limit: number;
  /** The places in the order they are tried: those that told outputs apart last are likely to do so again. */
  readonly #order: Uint32Array;

  constructor(all: readonly ComparedValues[]) {
    const places = new Map<string, number>();
    const placeOf = (key: string): number => {
      const known = places.get(key);
      if (known !== undefined) return known;
      places.set(key, places.size);
      return places.size - 1;
    };
    const placed = all.map(({ values }) => {
      const quantities: (Quantity | undefined)[] = [];
      for (const [key, value] of values) quantities[placeOf(key)] = value;
      return quantities;
    });
    this.#keys = [...places.keys()];
    this.#rows = placed.map((quantities) => new Row(quantities, places.size));
    this.#limit = normalisedErrorLimit(Math.max(1, places.size));
    this.#order = Uint32Array.from(this.#keys.keys());
  }

  /**
   * Whether outputs `a` and `b` (by their places in the list) are surely more than `apart` apart, by any one of
   * their values: of many pairs, most are. The uncertainty of a difference is at most the sum of the two, and
   * covered by at most `mostCoverage` times that.
   */
  isBeyond(a: number, b: number, apart: number): boolean {
    const [rowA, rowB] = [this.#rows[a], this.#rows[b]];
    const most = apart * this.#limit * (1 + 1e-9);
    if (!rowA || !rowB || most === Number.POSITIVE_INFINITY) return false;
    const [levelsA, levelsB, order] = [rowA.levels, rowB.levels, this.#order];
    const [deviationsA, deviationsB] = [rowA.deviations, rowB.deviations];
    for (let at = 0; at < order.length; at += 1) {
      const place = order[at] as number;
      const difference = Math.abs((levelsA[place] as number) - (levelsB[place] as number));
      if (!(difference > most * leastTold)) continue;
      const deviation = (deviationsA[place] as number) + (deviationsB[place] as number);
      if (!(difference > most * mostCoverage * deviation)) continue;
      order.copyWithin(1, 0, at);
      order[0] = place;
      return true;
    }
    return false;
  }

  /**
   * The value by which outputs `a` and `b` (by their places in the list) differ most for their uncertainties,
   * and how many they have in common; undefined for none.
   */
  of(a: number, b: number): { key: string; compared: number } | undefined {
    const [rowA, rowB] = [this.#rows[a], this.#rows[b]];
    if (!rowA || !rowB) return undefined;
    const [levelsA, levelsB] = [rowA.levels, rowB.levels];
    const [widthsA, widthsB] = [rowA.widths, rowB.widths];
    let [compared, most, at] = [0, -1, -1];
    for (let place = 0; place < levelsA.length; place += 1) {
      const difference = Math.abs((levelsA[place] as number) - (levelsB[place] as number));
      if (!(difference >= 0)) continue;
      compared += 1;
      const ratio = difference / ((widthsA[place] as number) + (widthsB[place] as number));
      if (ratio > most) {
        most = ratio;
        at = place;
      }
    }
    const key = this.#keys[at];
    return key === undefined ? undefined : { key, compared };
  }
}

/**
 * The numbers of one output's values by their places; what it has no value for is not a number, and compares
 * false with everything. Uncertainties are worked out when the first of them is asked for.
 */
class Row {
  readonly levels: Float64Array;
  readonly #values: readonly (Quantity | undefined)[];
  #deviations: Float64Array | undefined;
  #widths: Float64Array | undefined;

  constructor(values: readonly (Quantity | undefined)[], length: number) {
    this.#values = values;
    this.levels = new Float64Array(length).fill(Number.NaN);
    for (let place = 0; place < length; place += 1) {
      const value = values[place];
      if (value) this.levels[place] = value.value;
    }
  }

  get deviations(): Float64Array {
    this.#deviations ??= this.#numbers((value) => value.standardUncertainty);
    return this.#deviations;
  }

  get widths(): Float64Array {
    this.#widths ??= this.#numbers((value) => Math.max(value.expandedUncertainty, leastTold));
    return this.#widths;
  }

  #numbers(of: (value: Quantity) => number): Float64Array {
    const numbers = new Float64Array(this.levels.length).fill(Number.NaN);
    this.#values.forEach((value, place) => {
      if (value) numbers[place] = of(value);
    });
    return numbers;
  }
}
