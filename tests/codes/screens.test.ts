import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Display, foldOnScreen } from '../../src/codes/index.ts';
import { anyText } from './sample.ts';

/** 8/B, 0/O, 1/I, 5/S, 2/Z: common OCR tables; rn/m: Unicode UTS #39. Seven strokes: from memory of the glyphs. */
describe('what looks alike depends on the screen', () => {
  test.each<[Display, string, string, boolean]>([
    ['dot-matrix', '8B0S-I5Z', '8B0S-15Z', true],
    ['dot-matrix', '8B0S', 'BBOS', true],
    ['dot-matrix', 'RN-12', 'M-12', false],
    ['dot-matrix', 'AB-12', 'AC-12', false],
    ['anti-aliased', 'RN-12', 'M-12', true],
    ['anti-aliased', 'OS518', '0S5I8', true],
    ['anti-aliased', 'OS518', 'OS581', false],
    ['seven-segment', '5.08', 'S.O8', true],
    ['seven-segment', '6.b2', 'b.62', true],
    ['seven-segment', '8.b2', '8.82', false],
    ['seven-segment', '8.B2', '8.82', true],
    ['seven-segment', '1.d0', '1.00', false],
    ['seven-segment', '1.10', '1.1E', false],
  ])('%s: %s and %s', (display, a, b, alike) => {
    expect(foldOnScreen(a, display) === foldOnScreen(b, display)).toBe(alike);
  });
  test('separators do not tell codes apart', () => {
    expect(foldOnScreen('8B0S-I5Z', 'dot-matrix')).toBe(foldOnScreen('8B0SI5Z', 'dot-matrix'));
  });
  test.each<Display>(['dot-matrix', 'seven-segment', 'anti-aliased'])(
    '%s: folding twice is folding once',
    (display) => {
      fc.assert(
        fc.property(fc.oneof(anyText, fc.string({ unit: fc.constantFrom(...'RNMrn08BObdlI|-') })), (text) => {
          const once = foldOnScreen(text, display);
          expect(foldOnScreen(once, display)).toBe(once);
        }),
        { seed: 2, numRuns: 1000 },
      );
    },
  );
});
