/**
 * Files of a finished site, read and written through one piece of memory: a piece for each of ten thousand files would
 * have all that is kept looked through for garbage again and again.
 */
import { closeSync, fstatSync, mkdirSync, openSync, readSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

export class FileBytes {
  #bytes = Buffer.alloc(1 << 20);

  /** The content of a file, good until the next call. */
  read(path: string): Buffer {
    const file = openSync(path, 'r');
    try {
      const { size } = fstatSync(file);
      this.#makeRoom(size);
      let length = 0;
      while (length < size) {
        const count = readSync(file, this.#bytes, length, size - length, length);
        if (count === 0) break;
        length += count;
      }
      return this.#bytes.subarray(0, length);
    } finally {
      closeSync(file);
    }
  }

  /** The content of a file with a character for each byte. */
  readCharacters(path: string): string {
    return this.read(path).toString('latin1');
  }

  /** Writes a text as UTF-8; gives its bytes, good until the next call. */
  write(path: string, text: string): Buffer {
    // No UTF-16 unit takes more than three bytes of UTF-8.
    this.#makeRoom(3 * text.length);
    const content = this.#bytes.subarray(0, this.#bytes.write(text));
    writeAll(path, content);
    return content;
  }

  /** Writes a text that has a character for each byte; gives how many. */
  writeCharacters(path: string, text: string): number {
    this.#makeRoom(text.length);
    writeAll(path, this.#bytes.subarray(0, this.#bytes.write(text, 'latin1')));
    return text.length;
  }

  #makeRoom(size: number): void {
    if (this.#bytes.length < size) this.#bytes = Buffer.alloc(size);
  }
}

/** A text as UTF-8, with a character for each byte. */
export function byteCharacters(text: string): string {
  return Buffer.from(text).toString('latin1');
}

/** The text of such characters. */
export function textOfCharacters(characters: string): string {
  return Buffer.from(characters, 'latin1').toString();
}

/** Makes the folder where there is none: mostly there is, and asking each time takes as long as writing. */
function openToWrite(path: string): number {
  try {
    return openSync(path, 'w');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    mkdirSync(dirname(path), { recursive: true });
    return openSync(path, 'w');
  }
}

function writeAll(path: string, content: Buffer): void {
  const file = openToWrite(path);
  try {
    let written = 0;
    while (written < content.length) written += writeSync(file, content, written);
  } finally {
    closeSync(file);
  }
}
