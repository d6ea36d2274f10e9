import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalCode } from '../../src/codes/canonical-code.ts';
import { displayedPosition, leadingZeros, shownForm, zerosBefore } from '../../src/codes/normalise.ts';
import { anyText } from './sample.ts';

describe('the canonical form', () => {
  test.each([
    ['ab-1234-c', 'AB1234C'],
    [' AB 12_34.C ', 'AB1234C'],
    ['AB/12\\34', 'AB1234'],
    ['AB–12—34−5', 'AB12345'], // en dash, em dash, minus sign
    ['AB\u00AD12\u200B34', 'AB1234'], // soft hyphen, zero-width space
    ['ＡＢ１２', 'AB12'], // full-width letters and digits
    ['0x7e8', '0X7E8'],
    ['007', '007'],
    ['1.10', '110'],
    ['', ''],
    [' - . ', ''],
  ])('%j is %j', (typed, canonical) => {
    expect(canonicalCode(typed)).toBe(canonical);
  });

  test.each([
    'bin',
    'BIN',
    'hex',
    'dat',
    'cfg',
    'ini',
    'txt',
    'csv',
    'json',
    'xml',
    'zip',
    'png',
    'jpg',
    'jpeg',
  ])('the file ending .%s is dropped', (ending) => {
    expect(canonicalCode(`ab12.${ending}`)).toBe('AB12');
  });
  test('several endings go, others and bare ones stay', () => {
    expect(canonicalCode('ab12.cfg.txt ')).toBe('AB12');
    expect(canonicalCode('ab12.rev2')).toBe('AB12REV2');
    expect(canonicalCode('.bin')).toBe('BIN');
    expect(canonicalCode('ab12bin')).toBe('AB12BIN');
  });

  test('is its own canonical form, whatever was typed', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(canonicalCode(canonicalCode(text))).toBe(canonicalCode(text));
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  test('takes no more than a moment for what is not a code', () => {
    const texts = ['.'.repeat(10_000), ' '.repeat(10_000), '.bin'.repeat(2500), `${'.bin'.repeat(2500)}x`];
    for (const text of texts) {
      const start = process.cpuUsage();
      canonicalCode(text);
      // Of the processor: what else runs on the machine does not count.
      const { user, system } = process.cpuUsage(start);
      expect((user + system) / 1000, `milliseconds for ${text.slice(0, 8)}…`).toBeLessThan(1000);
    }
  });
});

test('as shown, letters keep their case, and the form its length', () => {
  expect(['eb.5-0', 'EB50', 'Straße', 'ﬁ-1'].map(shownForm)).toEqual(['eb50', 'EB50', 'STRASSE', 'fi1']);
});

test('zeros before a code are not all there is', () => {
  expect(['007', '0X07E8', '0X', '700', '00', ''].map(zerosBefore)).toEqual([2, 3, -1, 0, -1, -1]);
});

test('leading zeros are counted, a hexadecimal sign among them', () => {
  expect(['007', '0X07E8', '0X', '700', 'X0', ''].map(leadingZeros)).toEqual([2, 3, 2, 0, 0, 0]);
});

test('a place in the canonical form is found in the code as displayed', () => {
  const positions = (code: string, count: number) =>
    Array.from({ length: count }, (_, index) => displayedPosition(code, index));
  expect(positions('AB-1 2', 5)).toEqual([1, 2, 4, 6, 7]);
  expect(positions('', 1)).toEqual([1]);
});
