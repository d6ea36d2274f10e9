/** Of each known code the spelling that fits a text best, and which codes are worth naming. */
import type { CodeIndex, Spelling, SpellingGroup } from './code-index.ts';
import { worthAsking, worthListing } from './constants.ts';

/** A known code that may be what was typed. */
export interface Hit {
  /** The way of writing it that fits best. */
  readonly spelling: Spelling;
  readonly exact: boolean;
  /** What was typed is likelier the beginning of the code than all of it. */
  readonly isBeginning: boolean;
  readonly probability: number;
}

/** Codes of the family asked for, or all others: what they count together, and the best of them. */
export interface Side {
  sum: number;
  most: number;
  /** Its entry; -1 where there is none. */
  best: number;
}

/** Collects how probable every entry is, in plain arrays: most are never looked at again. */
export class BestSpellings {
  readonly inFamily: Side = { sum: 0, most: 0, best: -1 };
  readonly elsewhere: Side = { sum: 0, most: 0, best: -1 };
  /** All codes of which the text is likelier the beginning, together. */
  beginnings = 0;
  readonly #index: CodeIndex;
  readonly #probabilities: Float64Array;
  /** The group of an entry's best spelling, its place in there, and whether it is a beginning. */
  readonly #groups: Uint32Array;
  readonly #places: Uint32Array;
  readonly #isBeginning: Uint8Array;
  /** Whether an entry is of the family asked for. */
  readonly #isIn: Uint8Array;

  /** Takes what the groups of an index have been compared to count for, each ratio being worth so much. */
  constructor(
    index: CodeIndex,
    worthOf: (group: SpellingGroup) => number,
    isAskedFor: (group: SpellingGroup) => boolean,
  ) {
    const size = index.entries.length;
    this.#index = index;
    this.#probabilities = new Float64Array(size);
    this.#groups = new Uint32Array(size);
    this.#places = new Uint32Array(size);
    this.#isBeginning = new Uint8Array(size);
    this.#isIn = new Uint8Array(size);
    index.groups.forEach((group, number) => {
      this.#take(group, number, worthOf(group), isAskedFor(group) ? 1 : 0);
    });
    this.#sumUp();
  }

  #take(
    { entryIndexes, weights, misread }: SpellingGroup,
    number: number,
    worth: number,
    isIn: number,
  ): void {
    const { whole, beginning } = misread;
    for (let at = 0; at < weights.length; at += 1) {
      const [asWhole, asBeginning] = [whole[at] as number, beginning[at] as number];
      const probability = worth * (weights[at] as number) * (asWhole + asBeginning);
      const entry = entryIndexes[at] as number;
      if (probability <= (this.#probabilities[entry] as number)) continue;
      this.#probabilities[entry] = probability;
      this.#groups[entry] = number;
      this.#places[entry] = at;
      this.#isBeginning[entry] = asBeginning > asWhole ? 1 : 0;
      this.#isIn[entry] = isIn;
    }
  }

  #sumUp(): void {
    const { inFamily, elsewhere } = this;
    for (let entry = 0; entry < this.#probabilities.length; entry += 1) {
      const probability = this.#probabilities[entry] as number;
      const side = this.#isIn[entry] === 1 ? inFamily : elsewhere;
      side.sum += probability;
      if (this.#isBeginning[entry] === 1) this.beginnings += probability;
      if (probability <= side.most) continue;
      side.most = probability;
      side.best = entry;
    }
  }

  /**
   * The entries worth naming, their probabilities as parts of `total`. Left out is what can be no candidate: see
   * `worthListing`. Never left out are a code typed exactly, the best of either side, the same code in other
   * families, and the next best: the rival to be told from.
   */
  hits(text: string, total: number): Hit[] {
    const { entriesOf } = this.#index;
    const { inFamily, elsewhere } = this;
    const always = new Set(entriesOf.get(text));
    // Where even all together are not worth asking about, the best does not set the scale.
    const isKnown = always.size > 0;
    const least = ({ sum, most }: Side): number =>
      worthListing * (isKnown || sum >= worthAsking * total ? most : total);
    const leastIn = least(inFamily);
    const leastElsewhere = least(elsewhere);
    for (const { best } of [inFamily, elsewhere]) {
      if (best < 0) continue;
      for (const entry of entriesOf.get(this.#spelling(best).canonical) ?? []) always.add(entry);
    }
    const hits: Hit[] = [];
    let [rivalIn, rivalElsewhere] = [-1, -1];
    for (let entry = 0; entry < this.#probabilities.length; entry += 1) {
      const probability = this.#probabilities[entry] as number;
      if (probability === 0) continue; // nor has it a spelling, perhaps
      const isIn = this.#isIn[entry] === 1;
      if (probability >= (isIn ? leastIn : leastElsewhere) || always.has(entry)) {
        hits.push(this.#hit(entry, text, total));
      } else if (isIn) rivalIn = this.#likelier(entry, rivalIn);
      else rivalElsewhere = this.#likelier(entry, rivalElsewhere);
    }
    for (const rival of [rivalIn, rivalElsewhere]) if (rival >= 0) hits.push(this.#hit(rival, text, total));
    return hits;
  }

  #hit(entry: number, text: string, total: number): Hit {
    const spelling = this.#spelling(entry);
    return {
      spelling,
      exact: spelling.canonical === text,
      isBeginning: this.#isBeginning[entry] === 1,
      probability: (this.#probabilities[entry] as number) / total,
    };
  }

  #likelier(entry: number, than: number): number {
    return than >= 0 && (this.#probabilities[than] as number) >= (this.#probabilities[entry] as number)
      ? than
      : entry;
  }

  #spelling(entry: number): Spelling {
    const group = this.#index.groups[this.#groups[entry] as number];
    return group?.spellings[this.#places[entry] as number] as Spelling;
  }
}
