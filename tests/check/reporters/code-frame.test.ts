import { expect, test } from 'vitest';
import { type Place, TextFile } from '../../../src/base/index.ts';
import { codeFrame } from '../../../src/check/reporters/code-frame.ts';
import { printable, widthOf } from '../../../src/check/reporters/printable.ts';

/** The frame of the one occurrence of `marked` in `text`. */
function frameOf(text: string, marked: string, mostColumns?: number) {
  const source = new TextFile('a.yaml', text);
  const at = text.indexOf(marked);
  return codeFrame(() => source, source.place(at, at + marked.length), mostColumns);
}

test('a line in three parts', () => {
  expect(frameOf('family: moorlight\ncode: "KM"\n', '"KM"')).toEqual({
    line: 2,
    before: 'code: ',
    marked: '"KM"',
    after: '',
  });
});

test('tabs are spaces up to the next fourth column', () => {
  expect(frameOf('ab\tx: 1\n', 'x')).toEqual({ line: 1, before: 'ab  ', marked: 'x', after: ': 1' });
  expect(frameOf('\t\tx', 'x')?.before).toBe(' '.repeat(8));
});

test('the carets of wide signs are as wide as a terminal shows them (UAX #11)', () => {
  const frame = frameOf('name: 音響 = ä̈🎵x', '音響');
  expect(widthOf(frame?.before ?? '')).toBe(6);
  expect(widthOf(frame?.marked ?? '')).toBe(4);
  // U+FF71 is a halfwidth letter, U+FF21 a fullwidth one; accents that join take no column of their own.
  expect(widthOf('ｱ')).toBe(1);
  expect(widthOf('Ａ')).toBe(2);
  expect(widthOf('a\u0308')).toBe(1);
  expect(widthOf('🎵')).toBe(2);
  expect(widthOf('👩‍🔧')).toBe(2);
});

test.each([0, 1, 50, 99, 150, 300, 899])('a long line is cut around the stretch at column %d', (at) => {
  const text = `${'abcdefghij'.repeat(Math.ceil(at / 10)).slice(0, at)}WRONG${'z'.repeat(895)}`;
  const frame = frameOf(text, 'WRONG', 60);
  expect(frame?.marked).toBe('WRONG');
  const shown = `${frame?.before}${frame?.marked}${frame?.after}`;
  expect(widthOf(shown)).toBeLessThanOrEqual(60);
  expect(text).toContain(shown.replaceAll('…', ''));
  expect(shown.startsWith('…')).toBe(at > 20);
});

test('a stretch longer than the frame is cut at its end', () => {
  const frame = frameOf(`x${'y'.repeat(500)}`, 'y'.repeat(500), 40);
  expect(frame?.before).toBe('x');
  expect(frame?.after).toBe('…');
  expect(widthOf(`${frame?.marked}`)).toBe(37);
});

test('of several lines the first; of a point, an empty stretch; of no such line, nothing', () => {
  expect(frameOf('a: |\n  one\n  two\n', 'one\n  two')).toMatchObject({ line: 2, marked: 'one', after: '' });
  expect(frameOf('a: 1\r\nb: 2\r\n', 'b: 2\r')).toMatchObject({ line: 2, marked: 'b: 2', after: '' });
  const source = new TextFile('a.yaml', 'abc');
  const place: Place = { file: 'a.yaml', line: 1, column: 4, endLine: 1, endColumn: 4 };
  expect(codeFrame(() => source, place)).toEqual({ line: 1, before: 'abc', marked: '', after: '' });
  expect(codeFrame(() => source, { ...place, line: 9, endLine: 9 })).toBeUndefined();
  expect(codeFrame(() => undefined, place)).toBeUndefined();
});

test('nothing in a file can steer the terminal', () => {
  const frame = frameOf('a: \u001b[2Jx\u202Etxt\u0007', 'x');
  expect(`${frame?.before}${frame?.marked}${frame?.after}`).toBe('a: ␛[2Jx\uFFFDtxt␇');
  expect(printable('a\nb\u009b')).toBe('a␊b\uFFFD');
  expect(printable('a\nb\tc', true)).toBe('a\nb␉c');
});
