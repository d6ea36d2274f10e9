import { distance } from 'fastest-levenshtein';
import { describe, expect, test } from 'vitest';
import { compare, slipsOfLatest } from '../../src/codes/alignment.ts';
import { type Display, foldOnScreen, likelihood, modelOf } from '../../src/codes/index.ts';

const smooth = modelOf('anti-aliased');

/** How many slips the engine sees between what is typed and the code: its own notion of distance. */
function slipCount(typed: string, code: string): number {
  compare(typed, code, smooth);
  return slipsOfLatest().length;
}

describe('look-alikes', () => {
  // Unicode UTS #39, confusables, as transcribed; codes are compared in upper case, so m/rn is M/RN.
  test.each([
    ['0', 'O'],
    ['1', 'I'],
    ['1', 'l'],
    ['I', 'l'],
    ['m', 'rn'],
  ])('%s and %s are confusable in Unicode and look alike here', looksAlike);

  // In every common OCR table (common practice, no standard): Unicode does not hold these four.
  test.each([
    ['5', 'S'],
    ['8', 'B'],
    ['2', 'Z'],
    ['6', 'G'],
  ])('%s and %s look alike to OCR and here', looksAlike);

  function looksAlike(one: string, other: string): void {
    expect(foldOnScreen(`K${one}7`, 'anti-aliased')).toBe(foldOnScreen(`K${other}7`, 'anti-aliased'));
    const [a, b] = [`K${one.toUpperCase()}7`, `K${other.toUpperCase()}7`];
    expect(slipCount(a, b)).toBe(1);
    expect(slipCount(b, a)).toBe(1);
    // Each way far likelier than a character that looks like neither.
    expect(likelihood(a, b, 'complete', smooth)).toBeGreaterThan(
      20 * likelihood('KA7', b, 'complete', smooth),
    );
    expect(likelihood(b, a, 'complete', smooth)).toBeGreaterThan(
      20 * likelihood('KA7', a, 'complete', smooth),
    );
  }

  test('characters that no table holds together do not', () => {
    const plain = Array.from('347ACEFHJKPTUVWXY');
    for (const display of ['dot-matrix', 'seven-segment', 'anti-aliased'] satisfies Display[]) {
      expect(new Set(plain.map((character) => foldOnScreen(character, display))).size).toBe(plain.length);
    }
  });
});

describe('what counts as one slip', () => {
  test('two neighbours swapped: one, as in Damerau’s distance; two in Levenshtein’s', () => {
    expect(slipCount('KX8412', 'KX4812')).toBe(1);
    expect(distance('KX8412', 'KX4812')).toBe(2);
  });
  test('CA to ABC: three, as in the restricted kind (OSA); the unrestricted Damerau–Levenshtein distance is 2', () => {
    // Published example of the difference between the two kinds, as transcribed. Nothing can be typed between
    // two swapped characters here, so a swap is never edited again: the restricted kind.
    expect(slipCount('ABC', 'CA')).toBe(3);
  });
  test.each([
    ['other', 'KAPTHE', 'KAPTXE'],
    ['dropped', 'KAPHE', 'KAPTHE'],
    ['added', 'KAPTUHE', 'KAPTHE'],
  ])('a character %s: one, as Levenshtein has it (npm fastest-levenshtein)', (_, typed, code) => {
    expect(slipCount(typed, code)).toBe(1);
    expect(distance(typed, code)).toBe(1);
  });
  test('a digraph taken for one character: one slip, where Levenshtein has two edits', () => {
    expect(slipCount('KM7', 'KRN7')).toBe(1);
    expect(distance('KM7', 'KRN7')).toBe(2);
  });
});
