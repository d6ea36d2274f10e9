import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { codePattern } from '../../src/codes/index.ts';

describe('patterns as families write them are ready', () => {
  test.each([
    ['^[0-9A-Z]{4}-[0-9A-Z]{3}$', '8B0S-I5Z', '8B0S-I5'],
    ['^[0-9AbCdEF]\\.[0-9AbCdEF]{2}$', '1.1E', '1-1E'],
    ['^(?:AB|CD)-?[0-9]{2,4}(?:\\.[0-9]+)?$', 'CD1234.10', 'EF12'],
    ['^([A-Z0-9]{4}-)+[A-Z0-9]*$', '1234-ABCD-12', '1234'],
    ['^\\p{Lu}{2}\\d{3}$', 'OS518', 'os518'],
    // Only the older rules of ECMA-262 (Annex B) allow a needless backslash.
    ['^[A-Z]{2}\\-[0-9]{2}$', 'AB-12', 'AB12'],
    ['^(?=.*[0-9])[0-9A-Z]{6}$', 'S5B80G', 'SBBBBG'],
  ])('%s', (pattern, fits, fitsNot) => {
    const ready = codePattern(pattern);
    expect(ready.kind).toBe('ready');
    if (ready.kind !== 'ready') return;
    expect(ready.matches(fits)).toBe(true);
    expect(ready.matches(fitsNot)).toBe(false);
  });
});

test.each([
  ['^[A-Z', 'invalid'],
  ['^(AB$', 'invalid'],
  ['*', 'invalid'],
  ['A'.repeat(501), 'too-long'],
])('%s is %s', (pattern, kind) => {
  expect(codePattern(pattern).kind).toBe(kind);
});

/** The forms that OWASP names as “evil” (Regular expression Denial of Service, ReDoS), and relatives. */
const evil = [
  '^(a+)+$',
  '^([a-zA-Z]+)*$',
  '^(a|aa)+$',
  '^(a|a?)+$',
  '^(.*a){11}$',
  '^(a?){30}a{30}$',
  '^(?:a|b|ab|ba)*c$',
  `^${'a*'.repeat(12)}b$`,
  `^${'(a|a)'.repeat(25)}b$`,
  '^((a{1,20}){1,20}){1,20}$',
  '^(?=(a+)+b)a$',
];

test.each(evil)('%s is too costly to be tested', (pattern) => {
  expect(codePattern(pattern).kind).toBe('too-costly');
});

test('whatever is found ready tests any code within 100 ms, and none throws', () => {
  const piece = fc.constantFrom(
    'a',
    '.',
    '[ab]',
    '(',
    '(?:',
    ')',
    '|',
    '*',
    '+',
    '?',
    '{2,9}',
    '{3}',
    '\\d',
    '^',
    '$',
    '\\1',
    '(?=',
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 24 }), (pieces) => {
      const pattern = codePattern(pieces.join(''));
      if (pattern.kind !== 'ready') return;
      const start = process.cpuUsage();
      pattern.matches(`${'a'.repeat(39)}!`);
      // Of the processor: what else runs on the machine does not count.
      const { user, system } = process.cpuUsage(start);
      expect((user + system) / 1000).toBeLessThan(100);
    }),
    { numRuns: 5000, seed: 20260314 },
  );
});
