/** QR codes (ISO/IEC 18004) as drawings. */
import encodeQR from 'qr';

export interface QrDrawing {
  /** Width and height in modules, quiet zone counted in. */
  readonly size: number;
  /** For a stroke one module wide: a line for each run of dark modules. */
  readonly path: string;
}

/** Light modules all around, as many as ISO/IEC 18004 asks for. */
export const quietModules = 4;

const drawnQuiet = 1;

/**
 * The QR code of an address, in bytes, in the smallest version that holds it. Level Q: a quarter of it may be worn off
 * or under grease.
 * @throws where the text is not plain ASCII, as an address is: readers differ over anything else; or is too long.
 */
export function qrDrawing(address: string): QrDrawing {
  if (!/^[\x20-\x7e]+$/.test(address)) throw new Error(`“${address}” is no address in ASCII.`);
  // One light module around is the least the library draws; the others are counted in.
  const drawn = encodeQR(address, 'raw', { ecc: 'quartile', encoding: 'byte', border: drawnQuiet });
  const modules = drawn.length - 2 * drawnQuiet;
  const isDark = (row: number, column: number): boolean =>
    drawn[row + drawnQuiet]?.[column + drawnQuiet] ?? false;
  let path = '';
  for (let row = 0; row < modules; row += 1) {
    let end = 0;
    let begun = false;
    for (let column = 0; column < modules; column += 1) {
      if (!isDark(row, column)) continue;
      const from = column;
      while (column + 1 < modules && isDark(row, column + 1)) column += 1;
      path += begun
        ? `m${from - end} 0h${column + 1 - from}`
        : `M${from + quietModules} ${row + quietModules}.5h${column + 1 - from}`;
      end = column + 1;
      begun = true;
    }
  }
  return { size: modules + 2 * quietModules, path };
}
