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
  readonly #levels: readonly Float64Array[];
  readonly #deviations: readonly Column[];
  readonly #widths: readonly Column[];
  readonly #limit: number;
  /** The place of the value that told the last two outputs apart: it is likely to tell the next two. */
  #told = 0;

  constructor(all: readonly ComparedValues[]) {
    const places = new Map<string, number>();
    for (const { values } of all) {
      for (const key of values.keys()) if (!places.has(key)) places.set(key, places.size);
    }
    this.#keys = [...places.keys()];
    const quantities = all.map(({ values }) => this.#keys.map((key) => values.get(key)));
    // What an output has no value for is not a number, and compares false with everything.
    this.#levels = quantities.map((row) => Float64Array.from(row, (one) => one?.value ?? Number.NaN));
    this.#deviations = quantities.map((row) => new Column(row, (one) => one.standardUncertainty));
    this.#widths = quantities.map(
      (row) => new Column(row, (one) => Math.max(one.expandedUncertainty, leastTold)),
    );
    this.#limit = normalisedErrorLimit(Math.max(1, places.size));
  }

  /**
   * Whether outputs `a` and `b` (by their places in the list) are surely more than `apart` apart, by any one of
   * their values: of many pairs, most are. The uncertainty of a difference is at most the sum of the two, and
   * covered by at most `mostCoverage` times that.
   */
  isBeyond(a: number, b: number, apart: number): boolean {
    const [levelsA, levelsB] = [this.#levels[a], this.#levels[b]];
    const [deviationsA, deviationsB] = [this.#deviations[a], this.#deviations[b]];
    if (!levelsA || !levelsB || !deviationsA || !deviationsB) return false;
    const most = apart * this.#limit * (1 + 1e-9);
    const tells = (place: number): boolean => {
      const difference = Math.abs((levelsA[place] as number) - (levelsB[place] as number));
      if (!(difference > most * leastTold)) return false;
      return difference > most * mostCoverage * (deviationsA.at(place) + deviationsB.at(place));
    };
    if (tells(this.#told)) return true;
    for (let place = 0; place < levelsA.length; place += 1) {
      if (!tells(place)) continue;
      this.#told = place;
      return true;
    }
    return false;
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
      if (!(difference >= 0)) continue;
      compared += 1;
      const ratio = difference / (widthsA.at(place) + widthsB.at(place));
      if (ratio > most) {
        most = ratio;
        at = place;
      }
    }
    const key = this.#keys[at];
    return key === undefined ? undefined : { key, compared };
  }
}

/** A number of each of an output's values, worked out when it is first asked for: most never are. */
class Column {
  readonly #values: readonly (Quantity | undefined)[];
  readonly #of: (value: Quantity) => number;
  readonly #numbers: Float64Array;

  constructor(values: readonly (Quantity | undefined)[], of: (value: Quantity) => number) {
    this.#values = values;
    this.#of = of;
    this.#numbers = new Float64Array(values.length).fill(unknown);
  }

  at(place: number): number {
    const known = this.#numbers[place] ?? Number.NaN;
    if (known !== unknown) return known;
    const value = this.#values[place];
    const number = value ? this.#of(value) : Number.NaN;
    this.#numbers[place] = number;
    return number;
  }
}

/** No uncertainty is negative. */
const unknown = -1;
