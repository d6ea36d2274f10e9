import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalCode } from '../../src/codes/index.ts';
import { foldLookAlikes } from '../../src/codes/look-alikes.ts';
import { anyText, fiveFamilies, lookAlikeMisreads } from './sample.ts';

describe('folding look-alikes', () => {
  test('names each class by one of it', () => {
    expect(foldLookAlikes('OQD0-il1|-S5-B8-Z2-G6-rn-M')).toBe('00001111558822' + '66MM');
    expect(foldLookAlikes('KX7')).toBe('KX7');
  });
  test('every single look-alike misread of a code folds as the code does', () => {
    for (const { code } of fiveFamilies()) {
      for (const typed of lookAlikeMisreads(canonicalCode(code))) {
        expect(foldLookAlikes(typed), `${typed} for ${code}`).toBe(foldLookAlikes(code));
      }
    }
  });
  test('codes that differ otherwise stay apart', () => {
    expect(foldLookAlikes('KX481')).not.toBe(foldLookAlikes('KX482'));
    expect(foldLookAlikes('007')).not.toBe(foldLookAlikes('07'));
  });
  test('twice is the same as once', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, fc.string({ unit: fc.constantFrom(...'RNM08BOI|-') })), (text) => {
        expect(foldLookAlikes(foldLookAlikes(text))).toBe(foldLookAlikes(text));
      }),
      { seed: 2, numRuns: 2000 },
    );
  });
});
