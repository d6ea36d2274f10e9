/** The known codes, prepared once for many lookups. */
import { stopChance } from './alignment.ts';
import { type ConfusionModel, generalDisplay } from './confusion.ts';
import { longestCompared, stoppedEarly, strangerLonger } from './constants.ts';
import { canonicalCode } from './normalise.ts';

/** A known code: one profile of one family. */
export interface CodeEntry {
  /** As the screen shows it. */
  readonly code: string;
  readonly family: string;
  /** Id of the profile it stands for. */
  readonly profile: string;
  /** Other ways the same code is written. */
  readonly otherSpellings: readonly string[];
}

/** One way a code is written. */
export interface Spelling {
  readonly entry: CodeEntry;
  /** Place of the entry in the index. */
  readonly entryIndex: number;
  readonly written: string;
  readonly canonical: string;
  /** See `characterCounts`. */
  readonly counts: Uint8Array;
  /** false for other spellings than the displayed. */
  readonly displayed: boolean;
}

export interface CodeIndex {
  /** How the display is misread. */
  readonly model: ConfusionModel;
  readonly entries: readonly CodeEntry[];
  readonly spellings: readonly Spelling[];
  /** Canonical length of displayed codes to the share of codes that have it. */
  readonly lengths: ReadonlyMap<number, number>;
}

/** Prepares the codes for `findCode`. A code that consists of separators only can never be found. */
export function buildCodeIndex(
  entries: readonly CodeEntry[],
  model: ConfusionModel = generalDisplay,
): CodeIndex {
  const spellings: Spelling[] = [];
  const lengths = new Map<number, number>();
  entries.forEach((entry, entryIndex) => {
    const known = new Set(['']);
    for (const written of [entry.code, ...entry.otherSpellings]) {
      const canonical = canonicalCode(written);
      if (known.has(canonical)) continue;
      known.add(canonical);
      const counts = characterCounts(canonical, model);
      const displayed = written === entry.code;
      spellings.push({ entry, entryIndex, written, canonical, counts, displayed });
    }
    const { length } = canonicalCode(entry.code);
    lengths.set(length, (lengths.get(length) ?? 0) + 1 / entries.length);
  });
  return { model, entries, spellings, lengths };
}

const countable = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * How often each letter and digit occurs in a canonical code, look-alikes counted together. Parts of digraphs
 * are not counted, since they change number without a slip.
 */
export function characterCounts(canonical: string, model: ConfusionModel): Uint8Array {
  const counts = new Uint8Array(countable.length);
  for (const character of canonical.slice(0, longestCompared)) {
    if (model.digraphs.some(({ pair, single }) => (pair + single).includes(character))) continue;
    const at = countable.indexOf(model.representative.get(character) ?? character);
    if (at >= 0) counts[at] = (counts[at] ?? 0) + 1;
  }
  return counts;
}

/** At least so many slips that are no look-alikes lie between a text and a code: characters it lacks. */
export function fewestSlips(typed: Uint8Array, code: Uint8Array): number {
  let slips = 0;
  for (let at = 0; at < countable.length; at += 1) {
    slips += Math.max(0, (typed[at] as number) - (code[at] as number));
  }
  return slips;
}

/** Chance that a text of this length is typed for an unknown code: lengths spread as those known do. */
export function strangerLengthChance(index: CodeIndex, typedLength: number): number {
  let chance = 0;
  for (const [length, share] of index.lengths) {
    if (typedLength === length) chance += share * (1 - stoppedEarly - strangerLonger);
    else if (typedLength < length) chance += share * stopChance(length - typedLength);
    else chance += share * strangerLonger * 0.5 ** (typedLength - length);
  }
  return chance;
}
