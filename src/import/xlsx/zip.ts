/**
 * The parts of a workbook, which is a ZIP file (ISO/IEC 29500-2; layout: PKWARE APPNOTE 6.3, 4.3 and 4.4). What the
 * directory says is held against bounds before anything is unpacked, and nothing is unpacked beyond what it says.
 */
import { inflateRawSync } from 'node:zlib';
import { UnusableSheet } from '../cell.ts';

/** A bench sheet takes some kilobytes; its parts unpacked some megabytes. */
export const mostPackedBytes = 32 * 1024 ** 2;
const mostUnpackedBytes = 256 * 1024 ** 2;
const mostParts = 2000;

const endOfDirectory = 0x06054b50;
const directoryEntry = 0x02014b50;
const localHeader = 0x04034b50;

interface Part {
  readonly method: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly at: number;
}

export class Zip {
  readonly #bytes: Buffer;
  readonly #parts: ReadonlyMap<string, Part>;
  #left = mostUnpackedBytes;

  /** @throws UnusableSheet where it is damaged, locked, or larger than a bench sheet can be. */
  constructor(bytes: Uint8Array) {
    if (bytes.length > mostPackedBytes) throw tooLarge();
    this.#bytes = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    try {
      this.#parts = directory(this.#bytes);
    } catch (error) {
      throw error instanceof RangeError ? damaged() : error;
    }
  }

  /**
   * A part as text; undefined where there is none of that name.
   * @throws UnusableSheet where it is damaged, or what was unpacked so far is too much.
   */
  text(name: string): string | undefined {
    const part = this.#parts.get(name.toLowerCase());
    if (!part) return undefined;
    this.#left -= part.unpacked;
    if (this.#left < 0) throw tooLarge();
    try {
      if (this.#bytes.readUInt32LE(part.at) !== localHeader) throw damaged();
      const start =
        part.at + 30 + this.#bytes.readUInt16LE(part.at + 26) + this.#bytes.readUInt16LE(part.at + 28);
      const packed = this.#bytes.subarray(start, start + part.packed);
      const plain =
        part.method === 0 ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, part.unpacked) });
      if (plain.length !== part.unpacked) throw damaged();
      return new TextDecoder('utf-8').decode(plain);
    } catch (error) {
      throw error instanceof UnusableSheet ? error : damaged();
    }
  }
}

function directory(bytes: Buffer): Map<string, Part> {
  let end = bytes.length - 22;
  while (end >= 0 && bytes.readUInt32LE(end) !== endOfDirectory) {
    end -= 1;
    if (bytes.length - end > 22 + 65_535) end = -1;
  }
  if (end < 0) throw damaged();
  const count = bytes.readUInt16LE(end + 10);
  if (count > mostParts) throw tooLarge();
  const parts = new Map<string, Part>();
  let sum = 0;
  let at = bytes.readUInt32LE(end + 16);
  for (let index = 0; index < count; index += 1) {
    if (bytes.readUInt32LE(at) !== directoryEntry) throw damaged();
    const nameLength = bytes.readUInt16LE(at + 28);
    const name = bytes
      .subarray(at + 46, at + 46 + nameLength)
      .toString('utf8')
      .toLowerCase();
    const method = bytes.readUInt16LE(at + 10);
    const part = {
      method,
      packed: bytes.readUInt32LE(at + 20),
      unpacked: bytes.readUInt32LE(at + 24),
      at: bytes.readUInt32LE(at + 42),
    };
    if ((bytes.readUInt16LE(at + 8) & 1) !== 0) throw locked();
    if ((method !== 0 && method !== 8) || parts.has(name)) throw damaged();
    sum += part.unpacked;
    if (sum > mostUnpackedBytes) throw tooLarge();
    parts.set(name, part);
    at += 46 + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return parts;
}

const saveAsCsv =
  'Open it in the spreadsheet, show the sheet with the readings, and save that as CSV (UTF-8).';

export function damaged(what = 'The workbook is damaged, or it is no XLSX file.'): UnusableSheet {
  return new UnusableSheet(what, saveAsCsv);
}

function locked(): UnusableSheet {
  return new UnusableSheet('The workbook is locked with a password.', saveAsCsv);
}

export function tooLarge(): UnusableSheet {
  return new UnusableSheet(
    'The workbook is larger than a bench sheet can be: its size, or what it unpacks to, is beyond the bounds.',
    saveAsCsv,
  );
}
