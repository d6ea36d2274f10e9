/** The known codes, prepared once for many lookups. */

import { canonicalCode } from './canonical-code.ts';
import { channelOf, relativeChannel } from './channel.ts';
import { codeTree } from './code-tree.ts';
import { otherSpellingWeight } from './constants.ts';
import { leadingZeros, shownForm } from './normalise.ts';
import { type Display, modelOf } from './screens.ts';
import { type FamilyLength, Positions } from './strangers.ts';
import { TreeRows } from './tree-rows.ts';

/** A known code: one profile of one family. */
export interface CodeEntry {
  /** As the screen shows it. */
  readonly code: string;
  readonly family: string;
  /** Id of the profile it stands for. */
  readonly profile: string;
  /** Other ways the same code is written. */
  readonly otherSpellings: readonly string[];
  /** The kind of display its family has; it is compared by the mean of all kinds where none is given. */
  readonly display?: Display;
}

/** One way a code is written. */
export interface Spelling {
  readonly entry: CodeEntry;
  /** Place of the entry in the index. */
  readonly entryIndex: number;
  readonly written: string;
  readonly canonical: string;
  /** The canonical form in the letters of the screen, small or capital. */
  readonly shown: string;
  /** false for other spellings than the displayed. */
  readonly displayed: boolean;
}

/** Spellings of one family and display that are equally long and begin with equally many zeros. */
export interface SpellingGroup {
  readonly family: string;
  readonly length: number;
  readonly spellings: readonly Spelling[];
  /** The entry and the weight of each spelling. */
  readonly entryIndexes: Int32Array;
  readonly weights: Float64Array;
  /** What a text counts as a misread code of these, and as one of their unknown relatives. */
  readonly misread: TreeRows;
  readonly relative: TreeRows;
}

export interface CodeIndex {
  readonly entries: readonly CodeEntry[];
  readonly groups: readonly SpellingGroup[];
  readonly familyLengths: readonly FamilyLength[];
  /** How many entries each family has. */
  readonly familySizes: ReadonlyMap<string, number>;
  /** Places of the entries that are written so, by the canonical form of any of their spellings. */
  readonly entriesOf: ReadonlyMap<string, readonly number[]>;
}

/** What is known of the whole list where only some of its codes are at hand. */
export type WholeList = Pick<CodeIndex, 'familyLengths' | 'familySizes'>;

/**
 * Prepares the codes for `findCode`. A code that consists of separators only can never be found. With `whole`, the
 * entries are a part of that list: those left out count as being far from whatever is looked up.
 */
export function buildCodeIndex(entries: readonly CodeEntry[], whole?: WholeList): CodeIndex {
  const grouped = new Map<string, Spelling[]>();
  const lengths = new Map<string, { family: string; codes: string[] }>();
  const familySizes = new Map<string, number>();
  const entriesOf = new Map<string, number[]>();
  entries.forEach((entry, entryIndex) => {
    const { family, display } = entry;
    familySizes.set(family, (familySizes.get(family) ?? 0) + 1);
    const own = new Set(['']);
    for (const written of [entry.code, ...entry.otherSpellings]) {
      const canonical = canonicalCode(written);
      if (own.has(canonical)) continue;
      own.add(canonical);
      addTo(
        entriesOf,
        canonical,
        entryIndex,
        (list, one) => list.push(one),
        () => [],
      );
      const displayed = written === entry.code;
      const spelling = {
        entry,
        entryIndex,
        written,
        canonical,
        shown: shownForm(written),
        displayed,
      };
      const key = `${canonical.length} ${leadingZeros(canonical)} ${display} ${family}`;
      addTo(
        grouped,
        key,
        spelling,
        (list, one) => list.push(one),
        () => [],
      );
      if (displayed) {
        addTo(
          lengths,
          `${canonical.length} ${family}`,
          canonical,
          ({ codes }, code) => codes.push(code),
          () => ({ family, codes: [] }),
        );
      }
    }
  });
  const familyLengths = [...lengths.values()].map(
    ({ family, codes }): FamilyLength => ({
      family,
      length: codes[0]?.length ?? 0,
      count: codes.length,
      positions: Positions.of(codes),
    }),
  );
  const groups = [...grouped.values()].map(groupOf);
  return { entries, groups, familyLengths, familySizes, entriesOf, ...whole };
}

function addTo<Kept, One>(
  map: Map<string, Kept>,
  key: string,
  one: One,
  add: (kept: Kept, one: One) => void,
  make: () => Kept,
): void {
  const kept = map.get(key) ?? make();
  add(kept, one);
  map.set(key, kept);
}

function groupOf(spellings: readonly Spelling[]): SpellingGroup {
  const { entry, canonical } = spellings[0] as Spelling;
  const { family, display } = entry;
  const model = modelOf(display);
  const tree = codeTree(spellings, model.digraphs);
  const zeros = leadingZeros(canonical);
  return {
    family,
    length: canonical.length,
    spellings,
    entryIndexes: Int32Array.from(spellings, ({ entryIndex }) => entryIndex),
    weights: Float64Array.from(spellings, ({ displayed }) => (displayed ? 1 : otherSpellingWeight)),
    misread: new TreeRows(tree, channelOf(model), zeros),
    relative: new TreeRows(tree, relativeChannel(model, canonical.length), zeros),
  };
}
