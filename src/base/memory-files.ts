/** Content that lies in memory: another revision of a folder, or an example. */
import { type ContentFiles, decoded, type ReadFile } from './content-folder.ts';
import type { Finding } from './finding.ts';

export class MemoryFiles implements ContentFiles {
  readonly folder: string;
  readonly #files: ReadonlyMap<string, Uint8Array | string>;

  /** @param files by path with forward slashes. */
  constructor(folder: string, files: ReadonlyMap<string, Uint8Array | string>) {
    this.folder = folder;
    this.#files = files;
  }

  list(): { files: string[]; findings: Finding[] } {
    const shown = [...this.#files.keys()].filter((file) => !/(^|\/)\./.test(file));
    return { files: shown.sort(), findings: [] };
  }

  read(file: string): ReadFile {
    const content = this.#files.get(file) ?? '';
    return decoded(file, typeof content === 'string' ? new TextEncoder().encode(content) : content);
  }
}
