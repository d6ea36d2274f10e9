/** Passes over codes at a glance: those whose characters, in whatever order, could not have made the text. */
import type { Channel } from './channel.ts';
import { alphabetSize } from './constants.ts';

const digits = '0123456789|';
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** Which digits and which letters a code has, one bit each. */
export interface CharacterSet {
  readonly digits: number;
  readonly letters: number;
}

export function characterSet(canonical: string): CharacterSet {
  const set = { digits: 0, letters: 0 };
  for (const character of canonical) put(set, character);
  return set;
}

function put(set: { digits: number; letters: number }, character: string): void {
  const [digit, letter] = [digits.indexOf(character), letters.indexOf(character)];
  if (digit >= 0) set.digits |= 1 << digit;
  if (letter >= 0) set.letters |= 1 << letter;
}

/** What a typed character can come of: sets of shown ones, the likeliest first, and the chance each has at most. */
interface Origins {
  readonly sets: readonly (CharacterSet & { readonly most: number })[];
  /** Of any other character, or of none. */
  readonly rest: number;
}

/** Shown characters are put in sets by their chance: from each of these down to the next. */
const steps = [0.02, 0.004, 0.001];

const known = new WeakMap<Channel, Map<string, Origins>>();

function originsOf(how: Channel, typed: string): Origins {
  const ofChannel = known.get(how) ?? new Map<string, Origins>();
  known.set(how, ofChannel);
  const made = ofChannel.get(typed) ?? newOrigins(how, typed);
  ofChannel.set(typed, made);
  return made;
}

function newOrigins(how: Channel, typed: string): Origins {
  const code = typed.charCodeAt(0) < 128 ? typed.charCodeAt(0) : 0;
  const itself = { ...characterSet(typed), most: 1 };
  const sets = steps.map(() => ({ digits: 0, letters: 0, most: 0 }));
  let rest = Math.max(how.rates.added / alphabetSize, how.substituted[code] ?? 0);
  for (const shown of digits + letters) {
    if (shown === typed) continue;
    const chance = Math.max(
      how.substituted[shown.charCodeAt(0) * 128 + code] ?? 0,
      how.substituted[shown.toLowerCase().charCodeAt(0) * 128 + code] ?? 0,
    );
    const set = sets[steps.findIndex((step) => chance >= step)];
    if (set) {
      put(set, shown);
      set.most = Math.max(set.most, chance);
    } else rest = Math.max(rest, chance);
  }
  // Two characters typed for one share its chance.
  for (const { pair, single, probability } of how.digraphs) {
    if ((pair + single).includes(typed)) rest = Math.max(rest, Math.sqrt(probability));
  }
  return { sets: [itself, ...sets.filter(({ most }) => most > 0)], rest };
}

/**
 * The most that a text can count for a code with these characters, each of the text's characters come of its
 * likeliest origin; as a share of what it counts read right. The first `free` characters are let through.
 */
export function reachable(
  how: Channel,
  text: string,
  free: number,
): (digitsOfCode: number, lettersOfCode: number) => number {
  const origins = Array.from(text.slice(free), (typed) => originsOf(how, typed));
  return (digitsOfCode, lettersOfCode) => {
    let share = 1;
    for (const { sets, rest } of origins) {
      let most = rest;
      for (const set of sets) {
        if ((set.digits & digitsOfCode) !== 0 || (set.letters & lettersOfCode) !== 0) {
          most = Math.max(rest, set.most);
          break;
        }
      }
      share *= most;
    }
    return share;
  };
}
