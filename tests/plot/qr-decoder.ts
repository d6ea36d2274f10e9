/**
 * A reader of QR codes, written after ISO/IEC 18004:2015 (from memory; clauses named beside each part) and not after
 * the library that draws them. It reads clean pictures of versions 1 to 6 in byte mode, corrects nothing, and throws
 * at the first thing that is not as the standard has it.
 */

export interface ReadQr {
  readonly text: string;
  readonly version: number;
  readonly level: 'L' | 'M' | 'Q' | 'H';
  readonly mask: number;
}

/** Dark modules as `true`, row by row, quiet zone left out. */
export type Modules = readonly (readonly boolean[])[];

/** Reads a symbol. @throws Error with what is wrong with it. */
export function readQr(modules: Modules): ReadQr {
  const size = modules.length;
  const version = (size - 17) / 4;
  must(Number.isInteger(version) && version >= 1 && version <= 6, `a symbol of ${size} modules`);
  must(
    modules.every((row) => row.length === size),
    'a symbol that is not square',
  );
  const dark = (row: number, column: number): boolean => modules[row]?.[column] ?? false;
  assertPatterns(dark, size, version);
  const { level, mask } = readFormat(dark, size);
  const codewords = readCodewords(dark, size, version, mask);
  return { text: readBytes(dataOf(codewords, version, level)), version, level, mask };
}

type Dark = (row: number, column: number) => boolean;

function must(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(`not as ISO/IEC 18004 has it: ${what}`);
}

/** 6.3.3 finder patterns and separators, 6.3.5 timing patterns, 6.3.6 alignment pattern, 7.9.1 the dark module. */
function assertPatterns(dark: Dark, size: number, version: number): void {
  for (const [top, left] of [
    [0, 0],
    [0, size - 7],
    [size - 7, 0],
  ] as const) {
    for (let row = -1; row <= 7; row += 1) {
      for (let column = -1; column <= 7; column += 1) {
        const [y, x] = [top + row, left + column];
        if (y < 0 || x < 0 || y >= size || x >= size) continue;
        const ring = Math.max(Math.abs(row - 3), Math.abs(column - 3));
        must(dark(y, x) === (ring !== 2 && ring !== 4), `finder pattern at ${y}, ${x}`);
      }
    }
  }
  for (let at = 8; at < size - 8; at += 1) {
    must(dark(6, at) === (at % 2 === 0) && dark(at, 6) === (at % 2 === 0), `timing pattern at ${at}`);
  }
  const centre = 4 * version + 10;
  for (let row = -2; version > 1 && row <= 2; row += 1) {
    for (let column = -2; column <= 2; column += 1) {
      const ring = Math.max(Math.abs(row), Math.abs(column));
      must(dark(centre + row, centre + column) === (ring !== 1), 'alignment pattern');
    }
  }
  must(dark(size - 8, 8), 'the dark module');
}

/** 7.9.1: 15 bits, twice; 5 of data and 10 of a BCH code with the generator x¹⁰+x⁸+x⁵+x⁴+x²+x+1, masked. */
function readFormat(dark: Dark, size: number): Pick<ReadQr, 'level' | 'mask'> {
  const bits = (places: readonly (readonly [row: number, column: number])[]): number =>
    places.reduce((sum, [row, column]) => sum * 2 + Number(dark(row, column)), 0);
  // Most significant bit first.
  const beside = bits([
    ...[0, 1, 2, 3, 4, 5, 7].map((column) => [8, column] as const),
    ...[8, 7, 5, 4, 3, 2, 1, 0].map((row) => [row, 8] as const),
  ]);
  const apart = bits([
    ...[1, 2, 3, 4, 5, 6, 7].map((back) => [size - back, 8] as const),
    ...[8, 7, 6, 5, 4, 3, 2, 1].map((back) => [8, size - back] as const),
  ]);
  must(beside === apart, 'two copies of the format information that differ');
  const word = beside ^ 0b101010000010010;
  let rest = word;
  for (let bit = 14; bit >= 10; bit -= 1) {
    if (rest & (1 << bit)) rest ^= 0b10100110111 << (bit - 10);
  }
  must(rest === 0, 'format information that is no word of its code');
  const level = (['M', 'L', 'H', 'Q'] as const)[word >> 13];
  must(level !== undefined, 'a level');
  return { level, mask: (word >> 10) & 7 };
}

/** 7.8.2, Table 10: where the mask inverts, by row i and column j. */
const masks: readonly ((i: number, j: number) => boolean)[] = [
  (i, j) => (i + j) % 2 === 0,
  (i) => i % 2 === 0,
  (_, j) => j % 3 === 0,
  (i, j) => (i + j) % 3 === 0,
  (i, j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0,
  (i, j) => ((i * j) % 2) + ((i * j) % 3) === 0,
  (i, j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0,
  (i, j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
];

/** 7.7.3: pairs of columns from the right, up and down in turn, the column of the timing pattern left out. */
function readCodewords(dark: Dark, size: number, version: number, mask: number): number[] {
  const inverts = masks[mask];
  must(inverts !== undefined, 'a mask');
  const centre = 4 * version + 10;
  const isFunction = (row: number, column: number): boolean =>
    (row < 9 && column < 9) ||
    (row < 9 && column >= size - 8) ||
    (row >= size - 8 && column < 9) ||
    row === 6 ||
    column === 6 ||
    (version > 1 && Math.abs(row - centre) <= 2 && Math.abs(column - centre) <= 2);
  const bits: number[] = [];
  let up = true;
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right -= 1;
    for (let step = 0; step < size; step += 1) {
      const row = up ? size - 1 - step : step;
      for (const column of [right, right - 1]) {
        if (!isFunction(row, column)) bits.push(Number(dark(row, column) !== inverts(row, column)));
      }
    }
    up = !up;
  }
  const codewords: number[] = [];
  for (let at = 0; at + 8 <= bits.length; at += 8) {
    codewords.push(bits.slice(at, at + 8).reduce((sum, bit) => sum * 2 + bit, 0));
  }
  return codewords;
}

type Block = readonly [count: number, codewords: number, data: number];

/** 7.5.1, Table 9: the blocks of each version at the levels M and Q. */
const blockTable: Readonly<Record<string, readonly Block[]>> = {
  '1M': [[1, 26, 16]],
  '1Q': [[1, 26, 13]],
  '2M': [[1, 44, 28]],
  '2Q': [[1, 44, 22]],
  '3M': [[1, 70, 44]],
  '3Q': [[2, 35, 17]],
  '4M': [[2, 50, 32]],
  '4Q': [[2, 50, 24]],
  '5M': [[2, 67, 43]],
  '5Q': [
    [2, 33, 15],
    [2, 34, 16],
  ],
  '6M': [[4, 43, 27]],
  '6Q': [[4, 43, 19]],
};

/** 7.6: the blocks are interleaved. Each must be a word of its Reed–Solomon code. */
function dataOf(codewords: readonly number[], version: number, level: string): number[] {
  const blocks = (blockTable[`${version}${level}`] ?? []).flatMap(([count, total, data]) =>
    Array.from({ length: count }, () => ({ data, check: total - data, words: [] as number[] })),
  );
  const total = blocks.reduce((sum, { data, check }) => sum + data + check, 0);
  must(blocks.length > 0 && total === codewords.length, `${codewords.length} codewords`);
  let at = 0;
  const deal = (most: (block: (typeof blocks)[number]) => number): void => {
    for (let round = 0; round < Math.max(...blocks.map(most)); round += 1) {
      for (const block of blocks) {
        if (round >= most(block)) continue;
        block.words.push(codewords[at] ?? 0);
        at += 1;
      }
    }
  };
  deal(({ data }) => data);
  deal(({ check }) => check);
  for (const { words, check } of blocks) must(isCodeword(words, check), 'a block with an error');
  return blocks.flatMap(({ words, data }) => words.slice(0, data));
}

/** 7.5.2: a polynomial over GF(2⁸), modulo x⁸+x⁴+x³+x²+1, with zeros at α⁰ … α^(check−1). */
export function isCodeword(words: readonly number[], check: number): boolean {
  for (let power = 0, root = 1; power < check; power += 1, root = times(root, 2)) {
    if (words.reduce((sum, word) => times(sum, root) ^ word, 0) !== 0) return false;
  }
  return true;
}

function times(a: number, b: number): number {
  let product = 0;
  for (let bit = 7; bit >= 0; bit -= 1) {
    product <<= 1;
    if (product & 0x100) product ^= 0x11d;
    if (b & (1 << bit)) product ^= a;
  }
  return product;
}

/** 7.4.5 byte mode, 7.4.9 terminator, 7.4.10 pad codewords. */
function readBytes(data: readonly number[]): string {
  const bits = data.flatMap((word) => [...word.toString(2).padStart(8, '0')].map(Number));
  const take = (count: number): number => bits.splice(0, count).reduce((sum, bit) => sum * 2 + bit, 0);
  must(take(4) === 0b0100, 'a mode other than bytes');
  const length = take(8);
  const bytes = Uint8Array.from({ length }, () => take(8));
  must(take(Math.min(4, bits.length)) === 0, 'no terminator');
  must(take(bits.length % 8) === 0, 'padding that is not zero');
  for (let at = 0; bits.length > 0; at += 1) {
    must(take(8) === (at % 2 === 0 ? 0b11101100 : 0b00010001), 'a pad codeword');
  }
  return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
}
