/** CSV files out of whatever program. */
import { describe, expect, test } from 'vitest';
import { readSheet, UnusableSheet } from '../../src/import/index.ts';
import { imported, linesOf } from './sheet-of.ts';

const text = 'Code;Kanal;Lautstärke;Hz;V\r\n8B0S-I5Z;FL;12;63;1,9\r\n';
const read = ['brasslight/8b0s-i5z FL 12 63 1.9 - 1'];

describe('encodings', () => {
  test.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with a mark', Buffer.from(`\uFEFF${text}`)],
    ['UTF-16 LE with a mark', Buffer.from(`\uFEFF${text}`, 'utf16le')],
    ['UTF-16 LE without', Buffer.from(text, 'utf16le')],
    ['UTF-16 BE with a mark', Buffer.from(`\uFEFF${text}`, 'utf16le').swap16()],
    ['Windows-1252', Buffer.from(text, 'latin1')],
  ])('%s', (_, bytes) => {
    expect(linesOf(imported(bytes))).toEqual(read);
  });

  test('what was taken for Windows-1252 is said', () => {
    expect(imported(Buffer.from(text, 'latin1')).notes[0]).toMatch(/read as Windows-1252/);
  });

  test('a NUL is no text', () => {
    expect(() => readSheet(Buffer.from('Code;Hz\n8B\0S;63\nmore\n'), undefined)).toThrow(/Line 2 .*NUL/);
  });
});

test('the delimiter a spreadsheet says in the first line counts', () => {
  expect(linesOf(imported(`sep=;\n${text}`))).toEqual(read);
});

test('quoted cells, inches in a remark, blank lines', () => {
  const sheet =
    'Code,Channel,Step,Hz,V,Remarks\n\n"8B0S-I5Z",FL,12,63,"1.9","6"" cone"\n,,13,63,2.1,6" cone\n';
  expect(linesOf(imported(sheet)).length).toBe(2);
});

test('a quotation mark that is never closed is a fault of the file', () => {
  expect(() => readSheet(Buffer.from('Code,Hz\n"8B0S,63\n'), undefined)).toThrow(UnusableSheet);
});

test('a sheet wider than any bench has is refused', () => {
  expect(() => readSheet(Buffer.from(`${'a,'.repeat(600)}\n`), undefined)).toThrow(/the most is 500/);
});

test('a hundred thousand rows in a second or two of the processor', () => {
  const rows = ['profile,channel,step,hz,voltsRms,thdPercent,repeat'];
  for (let at = 0; at < 100_000; at += 1) {
    rows.push(`brasslight/8b0s-i5z,FL,${at % 30},${100 + Math.floor(at / 30)},1.${at % 1000},0.1,1`);
  }
  const bytes = Buffer.from(rows.join('\n'));
  const before = process.cpuUsage();
  const found = imported(bytes);
  const { user, system } = process.cpuUsage(before);
  expect(found.rows?.readings.length).toBe(100_000);
  expect((user + system) / 1e6).toBeLessThan(6);
});
