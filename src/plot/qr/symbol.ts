/** The modules of a QR code: patterns, codewords, mask, format (ISO/IEC 18004, 6.3 and 7.7 to 7.10). */
import { codewordsOf } from './codewords.ts';
import { unevenness } from './unevenness.ts';
import { type QrVersion, versionFor } from './versions.ts';

export interface QrSymbol {
  readonly size: number;
  /** Row by row, 1 for dark. */
  readonly modules: Uint8Array;
}

/**
 * The symbol of level Q with these bytes, in the smallest version.
 * @throws where there are more bytes than a symbol can hold.
 */
export function qrSymbol(bytes: Uint8Array): QrSymbol {
  const version = versionFor(bytes.length);
  if (!version) throw new Error(`${bytes.length} bytes are more than a QR code holds.`);
  const { size } = version;
  const { modules, isFree } = patternsOf(version);
  placeCodewords(modules, isFree, size, codewordsOf(bytes, version));
  let best: { mask: number; points: number; masked: Uint8Array } | undefined;
  for (const mask of masks.keys()) {
    const masked = maskedBy(mask, modules, isFree, size);
    const points = unevenness(masked, size);
    if (!best || points < best.points) best = { mask, points, masked };
  }
  if (!best) throw new Error('there are no masks');
  drawFormat(best.masked, version, best.mask);
  return { size, modules: best.masked };
}

/** The patterns that are the same whatever the symbol says, and which modules they leave free. */
function patternsOf({ version, size, alignment }: QrVersion): { modules: Uint8Array; isFree: Uint8Array } {
  const modules = new Uint8Array(size * size);
  const isFree = new Uint8Array(size * size).fill(1);
  const set = (row: number, column: number, dark: boolean): void => {
    if (row < 0 || column < 0 || row >= size || column >= size) return;
    modules[row * size + column] = Number(dark);
    isFree[row * size + column] = 0;
  };
  for (let at = 0; at < size; at += 1) {
    set(6, at, at % 2 === 0);
    set(at, 6, at % 2 === 0);
  }
  const rings = (row: number, column: number, radius: number, isDark: (ring: number) => boolean): void => {
    for (let y = -radius; y <= radius; y += 1)
      for (let x = -radius; x <= radius; x += 1)
        set(row + y, column + x, isDark(Math.max(Math.abs(x), Math.abs(y))));
  };
  for (const [row, column] of [
    [3, 3],
    [3, size - 4],
    [size - 4, 3],
  ] as const)
    rings(row, column, 4, (ring) => ring !== 2 && ring !== 4);
  const last = alignment.at(-1);
  for (const row of alignment) {
    for (const column of alignment) {
      const inCorner = (row === 6 && (column === 6 || column === last)) || (row === last && column === 6);
      if (!inCorner) rings(row, column, 2, (ring) => ring !== 1);
    }
  }
  // Kept free of codewords, light until the mask is chosen.
  for (let at = 0; at < 9; at += 1) {
    if (at !== 6) set(8, at, false);
    if (at !== 6) set(at, 8, false);
    if (at < 8) set(8, size - 1 - at, false);
    if (at < 8) set(size - 1 - at, 8, false);
  }
  if (version >= 7) {
    for (let at = 0; at < 18; at += 1) {
      set(Math.floor(at / 3), size - 11 + (at % 3), false);
      set(size - 11 + (at % 3), Math.floor(at / 3), false);
    }
  }
  return { modules, isFree };
}

/** In columns of two from the right, up and down by turns; the column of the timing pattern is left out. */
function placeCodewords(modules: Uint8Array, isFree: Uint8Array, size: number, words: Uint8Array): void {
  let bit = 0;
  let up = true;
  for (let right = size - 1; right > 0; right -= 2, up = !up) {
    if (right === 6) right -= 1;
    for (let step = 0; step < size; step += 1) {
      const row: number = up ? size - 1 - step : step;
      for (const column of [right, right - 1]) {
        const at = row * size + column;
        if (isFree[at] !== 1) continue;
        modules[at] = ((words[bit >>> 3] ?? 0) >>> (7 - (bit & 7))) & 1;
        bit += 1;
      }
    }
  }
}

/** Whether a mask turns a module over (table 10). */
const masks: readonly ((row: number, column: number) => boolean)[] = [
  (row, column) => (row + column) % 2 === 0,
  (row) => row % 2 === 0,
  (_, column) => column % 3 === 0,
  (row, column) => (row + column) % 3 === 0,
  (row, column) => (Math.floor(row / 2) + Math.floor(column / 3)) % 2 === 0,
  (row, column) => ((row * column) % 2) + ((row * column) % 3) === 0,
  (row, column) => (((row * column) % 2) + ((row * column) % 3)) % 2 === 0,
  (row, column) => (((row * column) % 3) + ((row + column) % 2)) % 2 === 0,
];

function maskedBy(mask: number, modules: Uint8Array, isFree: Uint8Array, size: number): Uint8Array {
  const turns = masks[mask];
  const masked = Uint8Array.from(modules);
  for (let row = 0, at = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1, at += 1) {
      if (isFree[at] === 1 && turns?.(row, column)) masked[at] = (masked[at] ?? 0) ^ 1;
    }
  }
  return masked;
}

/** Level and mask, twice; from version 7 on the version, twice; each with its BCH check (annexes C and D). */
function drawFormat(modules: Uint8Array, { version, size }: QrVersion, mask: number): void {
  const set = (row: number, column: number, bit: number): void => {
    modules[row * size + column] = bit & 1;
  };
  const levelQ = 0b11;
  const value = (levelQ << 3) | mask;
  const format = ((value << 10) | restOf(value << 10, 0x537, 10)) ^ 0x5412;
  for (let at = 0; at < 15; at += 1) {
    const bit = format >>> at;
    set(at < 6 ? at : at < 8 ? at + 1 : size - 15 + at, 8, bit);
    set(8, at < 8 ? size - 1 - at : at < 9 ? 7 : 14 - at, bit);
  }
  set(size - 8, 8, 1);
  if (version < 7) return;
  const versionBits = (version << 12) | restOf(version << 12, 0x1f25, 12);
  for (let at = 0; at < 18; at += 1) {
    set(Math.floor(at / 3), size - 11 + (at % 3), versionBits >>> at);
    set(size - 11 + (at % 3), Math.floor(at / 3), versionBits >>> at);
  }
}

/** The rest of a polynomial over two elements. */
function restOf(value: number, divisor: number, degree: number): number {
  let rest = value;
  for (let at = 31 - Math.clz32(rest); rest >>> degree > 0; at = 31 - Math.clz32(rest))
    rest ^= divisor << (at - degree);
  return rest;
}
