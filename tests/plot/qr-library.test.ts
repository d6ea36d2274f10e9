/** QR codes are, module for module, those of another encoder: the library `qrcode-generator`. */
import qrcode from 'qrcode-generator';
import { expect, test } from 'vitest';
import { randomStream } from '../../src/demo/random.ts';
import { qrSymbol } from '../../src/plot/qr/symbol.ts';
import { versionFor } from '../../src/plot/qr/versions.ts';

const stream = randomStream(1, 'addresses in QR codes');
const randomText = (length: number): string =>
  String.fromCharCode(...Array.from({ length }, () => Math.floor(stream.uniform(0x20, 0x7f))));

test('of the versions addresses have, and of some larger ones, at the most bytes each holds', () => {
  // The most bytes of level Q by version, ISO/IEC 18004:2015, table 7 (from memory: versions 1, 5, 10 and 40).
  const most = Array.from({ length: 1663 }, (_, index) => index + 1).filter(
    (length) => versionFor(length)?.version !== versionFor(length + 1)?.version,
  );
  expect([most[0], most[4], most[9], most[39]]).toEqual([11, 60, 151, 1663]);
  for (const length of [1, ...most.filter((_, at) => at < 12 || at % 5 === 4)]) {
    const text = randomText(length);
    const library = qrcode(0, 'Q');
    library.addData(text, 'Byte');
    library.make();
    const { size, modules } = qrSymbol(new TextEncoder().encode(text));
    expect(size, `${length} bytes`).toBe(library.getModuleCount());
    const theirs = Array.from(modules, (_, at) => Number(library.isDark(Math.floor(at / size), at % size)));
    expect(Buffer.from(modules).equals(Buffer.from(theirs)), `${length} bytes`).toBe(true);
  }
  expect(() => qrSymbol(new Uint8Array(1664))).toThrow('1664 bytes are more than a QR code holds.');
});
