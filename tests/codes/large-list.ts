/** A large list of invented codes of all three displays, with relatives that are known and relatives that are not. */

import { canonicalCode } from '../../src/codes/canonical-code.ts';
import type { CodeEntry, Display } from '../../src/codes/index.ts';
import { pick, randomNumbers } from './sample.ts';

/** Shapes of codes: A a letter, S a letter that seven strokes can draw, H a hexadecimal digit, 9 a digit, F one of
 * the family's own characters; others stand for themselves. */
const shapes: Readonly<Record<Display, readonly string[]>> = {
  'dot-matrix': ['FF-99999A', 'F9999-AA9', '0xFHHHHH', '99FA9999', 'FFA-999-9A'],
  'seven-segment': ['F9.99.999', 'F9S.99.99', '9F.9999S', 'F99-9999'],
  'anti-aliased': ['FF999-A9.99', 'XXXXXXX', 'FFA9999A', 'A99F-A999', 'F9A9A9.9'],
};
const displays = Object.keys(shapes) as Display[];
const sets: Readonly<Record<string, string>> = {
  A: 'ABCDEFGHIJKLMNOPQRSTUVWXYZ',
  S: 'AbCdEFHLPU',
  H: '0123456789ABCDEF',
  9: '0123456789',
  X: 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789',
};

/** Of all codes so many follow another one: the next revision, one character changed, mostly the last. */
const siblingShare = 0.3;

export interface LargeList {
  readonly known: readonly CodeEntry[];
  /** Made in the same way for the same families, and not known. */
  readonly unknown: readonly CodeEntry[];
}

/** So many codes in so many families, and a fifth more that are not known. */
export function largeList(codes: number, families: number, seed: number): LargeList {
  const random = randomNumbers(seed);
  const taken = new Set<string>();
  const known: CodeEntry[] = [];
  const unknown: CodeEntry[] = [];
  for (let number = 0; number < families; number += 1) {
    const display = displays[number % displays.length] as Display;
    const family = `family-${number}`;
    const letters = (display === 'seven-segment' ? sets.S : sets.A) ?? '';
    const own = [pick(letters, random), pick(letters, random)];
    let place = 0;
    const ofDisplay = shapes[display];
    const shape = (ofDisplay[Math.floor(number / displays.length) % ofDisplay.length] ?? '').replaceAll(
      'F',
      () => own[place++ % 2] ?? '',
    );
    // The family's own letters must not be read as signs of the shape: they stand where a code has them.
    const signs = Array.from(ofDisplay[Math.floor(number / displays.length) % ofDisplay.length] ?? '');
    const fixed = signs.map((sign, at) => (sign === 'F' || !sets[sign] ? shape.charAt(at) : ''));
    const made: string[] = [];
    const wanted = Math.ceil((codes * 1.2) / families);
    while (made.length < wanted) {
      const parent = random() < siblingShare ? made[Math.floor(random() * made.length)] : undefined;
      const code =
        parent === undefined
          ? signs.map((sign, at) => fixed[at] || pick(sets[sign] ?? '', random)).join('')
          : sibling(parent, signs, fixed, random);
      const key = `${family} ${canonicalCode(code)}`;
      if (taken.has(key)) continue;
      taken.add(key);
      made.push(code);
    }
    made.forEach((code, at) => {
      const list = (at * 5) % 6 === 0 ? unknown : known;
      list.push({ code, family, profile: `${family}/${code}`, otherSpellings: [], display });
    });
  }
  return { known, unknown };
}

function sibling(
  parent: string,
  signs: readonly string[],
  fixed: readonly string[],
  random: () => number,
): string {
  const free = signs.flatMap((_, at) => (fixed[at] ? [] : [at]));
  const at = random() < 0.7 ? free.at(-1) : free[Math.floor(random() * free.length)];
  const set = sets[signs[at ?? 0] ?? ''] ?? '';
  const step = 1 + Math.floor(random() * 3);
  const next = set.charAt((set.indexOf(parent.charAt(at ?? 0)) + step) % set.length);
  return parent.slice(0, at) + next + parent.slice((at ?? 0) + 1);
}
