/** Sizes of QR codes of level Q (ISO/IEC 18004:2015, tables 1, 9 and E.1; from memory, held against a library in tests). */

/** Codewords of error correction in each block, by version from 1 on. */
const checkWords = [
  13, 22, 18, 26, 18, 24, 18, 22, 20, 24, 28, 26, 24, 20, 30, 24, 28, 28, 26, 30, 28, 30, 30, 30, 30, 28, 30,
  30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30,
];

/** Blocks, by version from 1 on. */
const blockCounts = [
  1, 1, 2, 2, 4, 4, 6, 6, 8, 8, 8, 10, 12, 16, 12, 17, 16, 18, 21, 20, 23, 23, 25, 27, 29, 34, 34, 35, 38, 40,
  43, 45, 48, 51, 53, 56, 59, 62, 65, 68,
];

export interface QrVersion {
  readonly version: number;
  /** Modules along a side. */
  readonly size: number;
  /** Where alignment patterns have their centres, along both axes. */
  readonly alignment: readonly number[];
  readonly blocks: number;
  /** Codewords of error correction in each block. */
  readonly check: number;
  /** All codewords, those of error correction counted in. */
  readonly words: number;
  /** Bits that say how many bytes follow. */
  readonly lengthBits: number;
}

/** The smallest version that holds so many bytes; undefined where there is none. */
export function versionFor(bytes: number): QrVersion | undefined {
  for (const index of checkWords.keys()) {
    const version = versionOf(index + 1);
    const bits = 8 * (version.words - version.blocks * version.check);
    if (4 + version.lengthBits + 8 * bytes <= bits) return version;
  }
  return undefined;
}

function versionOf(version: number): QrVersion {
  const along = version === 1 ? 0 : Math.floor(version / 7) + 2;
  const size = 17 + 4 * version;
  // What finder, timing, alignment, format and version patterns leave.
  const aligned = along === 0 ? 0 : (25 * along - 10) * along - 55;
  const modules = (16 * version + 128) * version + 64 - aligned - (version >= 7 ? 36 : 0);
  return {
    version,
    size,
    alignment: alignmentOf(version, size, along),
    blocks: blockCounts[version - 1] ?? 0,
    check: checkWords[version - 1] ?? 0,
    words: Math.floor(modules / 8),
    lengthBits: version < 10 ? 8 : 16,
  };
}

function alignmentOf(version: number, size: number, along: number): number[] {
  if (along === 0) return [];
  const step = Math.floor((8 * version + 3 * along + 5) / (4 * along - 4)) * 2;
  return [6, ...Array.from({ length: along - 1 }, (_, index) => size - 7 - step * (along - 2 - index))];
}
