/** The codewords of a QR code: a text in byte mode, split into blocks, each with its Reed–Solomon check (ISO/IEC 18004, 7.4 to 7.6). */
import type { QrVersion } from './versions.ts';

/** All codewords in the order they are placed in. */
export function codewordsOf(bytes: Uint8Array, version: QrVersion): Uint8Array {
  const { blocks, check, words } = version;
  const data = dataWords(bytes, version);
  const shortBlocks = blocks - (words % blocks);
  const shortData = Math.floor(words / blocks) - check;
  const parts: { data: Uint8Array; check: Uint8Array }[] = [];
  for (let block = 0, at = 0; block < blocks; block += 1) {
    const length = shortData + (block < shortBlocks ? 0 : 1);
    const part = data.subarray(at, at + length);
    parts.push({ data: part, check: checkOf(part, check) });
    at += length;
  }
  const all: number[] = [];
  for (let at = 0; at <= shortData; at += 1) {
    for (const part of parts) if (at < part.data.length) all.push(part.data[at] ?? 0);
  }
  for (let at = 0; at < check; at += 1) for (const part of parts) all.push(part.check[at] ?? 0);
  return Uint8Array.from(all);
}

/** Mode, length, bytes, end, and what fills the rest. */
function dataWords(bytes: Uint8Array, { blocks, check, words, lengthBits }: QrVersion): Uint8Array {
  const data = new Uint8Array(words - blocks * check);
  let bit = 0;
  const put = (value: number, bits: number): void => {
    for (let at = bits - 1; at >= 0; at -= 1, bit += 1) {
      if ((value >>> at) & 1) data[bit >>> 3] = (data[bit >>> 3] ?? 0) | (0x80 >>> (bit & 7));
    }
  };
  put(0b0100, 4);
  put(bytes.length, lengthBits);
  for (const byte of bytes) put(byte, 8);
  bit = Math.min(8 * data.length, bit + 4);
  for (let at = Math.ceil(bit / 8), fill = 0xec; at < data.length; at += 1, fill ^= 0xec ^ 0x11)
    data[at] = fill;
  return data;
}

/** Powers of 2 in the field of 256 with the polynomial x⁸ + x⁴ + x³ + x² + 1, and their logarithms. */
interface Field {
  readonly power: Uint8Array;
  readonly log: Uint8Array;
}
let fieldMade: Field | undefined;

function field(): Field {
  if (fieldMade) return fieldMade;
  const power = new Uint8Array(255);
  const log = new Uint8Array(256);
  for (let exponent = 0, value = 1; exponent < 255; exponent += 1) {
    power[exponent] = value;
    log[value] = exponent;
    value = value & 0x80 ? (value << 1) ^ 0x11d : value << 1;
  }
  fieldMade = { power, log };
  return fieldMade;
}

function times(one: number, other: number): number {
  if (one === 0 || other === 0) return 0;
  const { power, log } = field();
  return power[((log[one] ?? 0) + (log[other] ?? 0)) % 255] ?? 0;
}

const generators = new Map<number, Uint8Array>();

/** The product of (x − 2ⁱ) for i below `length`, without its leading 1. */
function generatorOf(length: number): Uint8Array {
  const known = generators.get(length);
  if (known) return known;
  const made = new Uint8Array(length);
  made[length - 1] = 1;
  for (let root = 0; root < length; root += 1) {
    const value = field().power[root] ?? 0;
    for (let at = 0; at < length; at += 1) made[at] = times(made[at] ?? 0, value) ^ (made[at + 1] ?? 0);
  }
  generators.set(length, made);
  return made;
}

/** The rest of the data divided by the generator. */
function checkOf(data: Uint8Array, length: number): Uint8Array {
  const generator = generatorOf(length);
  const rest = new Uint8Array(length);
  for (const word of data) {
    const factor = word ^ (rest[0] ?? 0);
    rest.copyWithin(0, 1);
    rest[length - 1] = 0;
    for (let at = 0; at < length; at += 1) rest[at] = (rest[at] ?? 0) ^ times(generator[at] ?? 0, factor);
  }
  return rest;
}
