/** Of each known code the spelling that fits a text best, and which codes are worth naming. */
import type { CodeEntry, Spelling, SpellingGroup } from './code-index.ts';
import { worthListing } from './constants.ts';

/** A known code that may be what was typed. */
export interface Hit {
  /** The way of writing it that fits best. */
  readonly spelling: Spelling;
  readonly exact: boolean;
  /** What was typed is likelier the beginning of the code than all of it. */
  readonly isBeginning: boolean;
  readonly probability: number;
}

/** Collects how probable every entry is, in plain arrays: most are never looked at again. */
export class BestSpellings {
  readonly #entries: readonly CodeEntry[];
  readonly #probabilities: Float64Array;
  /** The group of an entry's best spelling, and its place in there. */
  readonly #groups: SpellingGroup[] = [];
  readonly #groupOf: Int32Array;
  readonly #places: Int32Array;

  constructor(entries: readonly CodeEntry[]) {
    this.#entries = entries;
    this.#probabilities = new Float64Array(entries.length);
    this.#groupOf = new Int32Array(entries.length);
    this.#places = new Int32Array(entries.length);
  }

  /** Adds what a group's codes were compared to count for, each ratio being worth so much. */
  take(group: SpellingGroup, perRatio: number): void {
    const { entryIndexes, weights, misread } = group;
    const number = this.#groups.push(group) - 1;
    for (let at = 0; at < weights.length; at += 1) {
      const entry = entryIndexes[at] as number;
      const probability = perRatio * (weights[at] as number) * misread.ratio(at);
      if (probability <= (this.#probabilities[entry] as number)) continue;
      this.#probabilities[entry] = probability;
      this.#groupOf[entry] = number;
      this.#places[entry] = at;
    }
  }

  /** All entries together: those of a family (or all, where none is given), the others, and the beginnings. */
  sums(family: string | undefined): { inFamily: number; elsewhere: number; beginnings: number } {
    const sums = { inFamily: 0, elsewhere: 0, beginnings: 0 };
    this.#probabilities.forEach((probability, entry) => {
      if (this.#isIn(family, entry)) sums.inFamily += probability;
      else sums.elsewhere += probability;
      if (this.#isBeginning(entry)) sums.beginnings += probability;
    });
    return sums;
  }

  /**
   * The entries worth naming, their probabilities as parts of `total`: all that are at least `worthListing` of the
   * best, in the family and elsewhere; and whatever their probability those typed exactly, and the best code again.
   */
  hits(text: string, family: string | undefined, total: number): Hit[] {
    let [own, other] = [0, 0];
    let best = -1;
    this.#probabilities.forEach((probability, entry) => {
      if (!this.#isIn(family, entry)) other = Math.max(other, probability);
      else if (probability > own) {
        own = probability;
        best = entry;
      }
    });
    const bestCode = best < 0 ? text : this.#spelling(best).canonical;
    const hits: Hit[] = [];
    this.#probabilities.forEach((probability, entry) => {
      if (probability === 0) return;
      const spelling = this.#spelling(entry);
      const exact = spelling.canonical === text;
      const least = worthListing * (this.#isIn(family, entry) ? own : other);
      if (probability < least && !exact && spelling.canonical !== bestCode) return;
      hits.push({ spelling, exact, isBeginning: this.#isBeginning(entry), probability: probability / total });
    });
    return hits;
  }

  #isIn(family: string | undefined, entry: number): boolean {
    return family === undefined || this.#entries[entry]?.family === family;
  }

  #rows(entry: number): SpellingGroup['misread'] | undefined {
    return this.#groups[this.#groupOf[entry] as number]?.misread;
  }

  #isBeginning(entry: number): boolean {
    const rows = this.#rows(entry);
    const place = this.#places[entry] as number;
    return rows !== undefined && (rows.beginning[place] as number) > (rows.whole[place] as number);
  }

  #spelling(entry: number): Spelling {
    return this.#groups[this.#groupOf[entry] as number]?.spellings[this.#places[entry] as number] as Spelling;
  }
}
