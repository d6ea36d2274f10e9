/** QR codes, rasterised and read again by a reader of our own written after ISO/IEC 18004. */
import { describe, expect, test } from 'vitest';
import { qrDrawing } from '../../src/plot/qr.ts';
import { isCodeword, readQr } from './qr-decoder.ts';
import { modulesOf, svgOf } from './qr-picture.ts';

const read = async (address: string) => {
  const drawing = qrDrawing(address);
  return readQr(await modulesOf(svgOf(drawing), drawing.size));
};

describe('the reader', () => {
  // ISO/IEC 18004:2015, Annex I: “01234567” as version 1-M, 16 codewords of data and 10 of error correction; from memory.
  const data = [
    0x10, 0x20, 0x0c, 0x56, 0x61, 0x80, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11,
  ];
  const check = [0xa5, 0x24, 0xd4, 0xc1, 0xed, 0x36, 0xc7, 0x87, 0x2c, 0x55];

  test('takes the worked example of the standard for a codeword, and nothing one bit away from it', () => {
    const words = [...data, ...check];
    expect(isCodeword(words, 10)).toBe(true);
    for (const at of words.keys()) {
      expect(isCodeword(words.with(at, (words[at] ?? 0) ^ 0x08), 10), String(at)).toBe(false);
    }
  });

  test('refuses a symbol with any module turned over that is not a spare bit', async () => {
    const drawing = qrDrawing('https://help.example/units/moorlight/');
    const modules = await modulesOf(svgOf(drawing), drawing.size);
    let refused = 0;
    let tried = 0;
    for (let row = 0; row < modules.length; row += 3) {
      for (let column = 0; column < modules.length; column += 2) {
        tried += 1;
        const turned = modules.map((cells, y) =>
          y === row ? cells.map((cell, x) => (x === column ? !cell : cell)) : cells,
        );
        try {
          readQr(turned);
        } catch {
          refused += 1;
        }
      }
    }
    // Versions 2 to 6 have 7 bits that belong to no codeword.
    expect(tried - refused).toBeLessThanOrEqual(7);
    expect(tried).toBeGreaterThan(150);
  });
});

test('every length of address that a site may have comes back as it was, at level Q', async () => {
  const versions = new Set<number>();
  for (let length = 9; length <= 74; length += 5) {
    const address =
      `https://${'help-0123456789.example/units/moorlight/profiles/~%41?a=b&c/'.repeat(2)}`.slice(0, length);
    const { text, version, level } = await read(address);
    expect(text).toBe(address);
    expect(level).toBe('Q');
    versions.add(version);
  }
  expect([...versions]).toEqual([1, 2, 3, 4, 5, 6]);
});

test('it takes the smallest version: capacities at level Q (ISO/IEC 18004:2015, Table 7; from memory)', async () => {
  const capacities = [11, 20, 32, 46, 60, 74];
  for (const [index, bytes] of capacities.entries()) {
    expect(qrDrawing('a'.repeat(bytes)).size - 8).toBe(17 + 4 * (index + 1));
    expect(qrDrawing('a'.repeat(bytes + 1)).size - 8).toBe(17 + 4 * (index + 2));
  }
});

test('what is no address in ASCII is refused in words', () => {
  expect(() => qrDrawing('https://help.example/straße/')).toThrow('is no address in ASCII');
  expect(() => qrDrawing('')).toThrow('is no address in ASCII');
});
