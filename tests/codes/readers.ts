/** Readers who take codes off a screen and slip: for the campaigns that count how often the lookup is right. */

import { canonicalCode } from '../../src/codes/canonical-code.ts';
import { type CodeEntry, type Display, modelOf } from '../../src/codes/index.ts';
import { shownForm } from '../../src/codes/normalise.ts';
import { lettersAndDigits, pick } from './sample.ts';

type Random = () => number;

/** What one reader does: which characters he takes for which, and how often the rest happens. */
export interface Reader {
  readonly name: string;
  /** What a shown character is taken for, with chances. */
  readonly takenFor: (
    shown: string,
    display: Display,
  ) => readonly (readonly [typed: string, chance: number])[];
  readonly digraphs: (
    display: Display,
  ) => readonly (readonly [pair: string, single: string, chance: number])[];
  readonly other: number;
  readonly dropped: number;
  readonly doubled: number;
  readonly added: number;
  readonly swapped: number;
}

const rows = new Map<string, readonly (readonly [string, number])[]>();

/** The reader the lookup's own model describes, his look-alikes and other slips so many times as frequent. */
export function modelReader(name: string, lookAlikes = 1, others = 1): Reader {
  return {
    name,
    takenFor: (shown, display) => {
      const key = `${lookAlikes} ${display} ${shown}`;
      const made =
        rows.get(key) ??
        Array.from(`${lettersAndDigits}|`).flatMap((typed): [string, number][] => {
          const chance = modelOf(display).seen[shown.charCodeAt(0) * 128 + typed.charCodeAt(0)] ?? 0;
          return chance > 0 ? [[typed, lookAlikes * chance]] : [];
        });
      rows.set(key, made);
      return made;
    },
    digraphs: (display) =>
      modelOf(display).digraphs.map(({ pair, single, probability }) => [
        pair,
        single,
        lookAlikes * probability,
      ]),
    other: 0.01 * others,
    dropped: 0.005 * others,
    doubled: 0.005 * others,
    added: 0.002 * others,
    swapped: 0.004 * others,
  };
}

/** Another reader altogether: one short table for every display, no case, more slips of the fingers. */
const otherTable = ['0O', '0Q', '0D', '1I', '1L', '5S', '8B', '2Z', '6G', '7T', '4A', 'UV', '38', '9G', '17'];
export const otherReader: Reader = {
  name: 'another matrix',
  takenFor: (shown) => {
    const capital = shown.toUpperCase();
    return otherTable.flatMap((pair): [string, number][] => {
      const at = pair.indexOf(capital);
      return at < 0 ? [] : [[pair.charAt(1 - at), 0.03]];
    });
  },
  digraphs: () => [],
  other: 0.008,
  dropped: 0.008,
  doubled: 0.004,
  added: 0.004,
  swapped: 0.008,
};

/** One slip: what is typed in place of so many characters from one on, and its chance. */
interface Slip {
  readonly at: number;
  readonly length: number;
  readonly typed: string;
  readonly chance: number;
}

/** Every single slip of a reader over a code, `other` and `added` characters one by one. */
export function singleSlips(shown: string, display: Display, reader: Reader): Slip[] {
  const slips: Slip[] = [];
  const characters = Array.from(shown.toUpperCase());
  const any = `${lettersAndDigits}|`;
  characters.forEach((character, at) => {
    const put = (typed: string, chance: number, length = 1) => slips.push({ at, length, typed, chance });
    for (const [typed, chance] of reader.takenFor(shown.charAt(at), display)) put(typed, chance);
    for (const typed of any) if (typed !== character) put(typed, reader.other / (any.length - 1));
    put('', reader.dropped);
    put(character + character, reader.doubled);
    for (const typed of any) put(typed + character, reader.added / any.length);
    const next = characters[at + 1];
    if (next !== undefined && next !== character) put(next + character, reader.swapped, 2);
    for (const [pair, single, chance] of reader.digraphs(display)) {
      if (character === single) put(pair, chance);
      if (character + next === pair) put(single, chance, 2);
    }
  });
  return slips;
}

function drawn(slips: readonly Slip[], random: Random): Slip {
  let left = random() * slips.reduce((sum, { chance }) => sum + chance, 0);
  for (const slip of slips) {
    left -= slip.chance;
    if (left < 0) return slip;
  }
  return slips.at(-1) as Slip;
}

/** A code as typed with so many slips in different places. */
export function misread(entry: CodeEntry, slipCount: number, reader: Reader, random: Random): string {
  const shown = shownForm(entry.code);
  const slips = singleSlips(shown, entry.display ?? 'anti-aliased', reader);
  const chosen: Slip[] = [];
  while (chosen.length < slipCount) {
    const slip = drawn(slips, random);
    const meets = chosen.some(({ at, length }) => slip.at < at + length && at < slip.at + slip.length);
    if (!meets) chosen.push(slip);
  }
  let typed = canonicalCode(entry.code);
  for (const { at, length, typed: text } of chosen.toSorted((a, b) => b.at - a.at)) {
    typed = typed.slice(0, at) + text + typed.slice(at + length);
  }
  return typed;
}

/** A code as this reader types it: any number of slips, none mostly; now and then only its beginning. */
export function reading(entry: CodeEntry, reader: Reader, random: Random): string {
  const shown = shownForm(entry.code);
  const slips = singleSlips(shown, entry.display ?? 'anti-aliased', reader);
  let typed = '';
  for (let at = 0; at < shown.length; ) {
    let left = random();
    const slip = slips.find((one) => {
      if (one.at !== at) return false;
      left -= one.chance;
      return left < 0;
    });
    typed += slip ? slip.typed : shown.charAt(at).toUpperCase();
    at += slip?.length ?? 1;
  }
  if (random() < 0.03) {
    let unread = 1;
    while (random() < 0.7) unread += 1;
    typed = typed.slice(0, Math.max(1, shown.length - unread));
  }
  return typed === '' ? pick(lettersAndDigits, random) : typed;
}
