/** Invented codes and readings for the tests: the same at every run. */
import fc from 'fast-check';
import { anyDisplay, type CodeEntry } from '../../src/codes/index.ts';

/** Random numbers from 0 to below 1, the same for the same seed (mulberry32, public domain). */
export function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const digits = '0123456789';
export const lettersAndDigits = letters + digits;

export function pick(characters: string, random: () => number): string {
  return characters.charAt(Math.floor(random() * characters.length));
}

/** The shapes of five families: A a letter, 9 a digit, X either. */
export const shapes = ['AA9999A', '99AA999', 'AAA99999', 'XXXXXX', 'A9999-XX'];

export function codeOfShape(shape: string, random: () => number): string {
  const sets: Record<string, string> = { A: letters, 9: digits, X: lettersAndDigits };
  return Array.from(shape, (sign) => (sets[sign] ? pick(sets[sign], random) : sign)).join('');
}

export function entry(code: string, family = 'one', otherSpellings: readonly string[] = []): CodeEntry {
  return { code, family, profile: `${family}/${code}`, otherSpellings };
}

/** 500 different codes, 100 in each of five families. */
export function fiveFamilies(seed = 20): CodeEntry[] {
  const random = randomNumbers(seed);
  const codes = new Set<string>();
  return shapes.flatMap((shape, family) => {
    const entries: CodeEntry[] = [];
    while (entries.length < 100) {
      const code = codeOfShape(shape, random);
      if (!codes.has(code)) entries.push(entry(code, `family-${family}`));
      codes.add(code);
    }
    return entries;
  });
}

/** Every text that differs from a code by one common look-alike, the digraph included. */
export function lookAlikeMisreads(code: string): string[] {
  const { seen, digraphs } = anyDisplay;
  const misreads: string[] = [];
  for (let at = 0; at < code.length; at += 1) {
    for (const character of `${lettersAndDigits}|`) {
      if ((seen[code.charCodeAt(at) * 128 + character.charCodeAt(0)] ?? 0) >= 0.01) {
        misreads.push(code.slice(0, at) + character + code.slice(at + 1));
      }
    }
    for (const { pair, single } of digraphs) {
      for (const [shown, typed] of [
        [pair, single],
        [single, pair],
      ] as const) {
        if (code.startsWith(shown, at)) {
          misreads.push(code.slice(0, at) + typed + code.slice(at + shown.length));
        }
      }
    }
  }
  return misreads;
}

/** Any string of UTF-16 units: lone surrogates, controls, emoji. */
export const anyText = fc
  .array(fc.oneof(fc.integer({ min: 0, max: 0xffff }), fc.integer({ min: 0x20, max: 0x7e })), {
    maxLength: 60,
  })
  .map((units) => String.fromCharCode(...units));
