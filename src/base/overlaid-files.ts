/** A content folder with some files written over it, in memory only: what would be, before it is. */
import type { ContentFiles, ReadFile } from './content-folder.ts';
import type { Finding } from './finding.ts';
import { MemoryFiles } from './memory-files.ts';

export class OverlaidFiles implements ContentFiles {
  readonly folder: string;
  readonly #under: ContentFiles;
  readonly #over: MemoryFiles;
  readonly #names: ReadonlySet<string>;

  /** @param over texts by path with forward slashes. */
  constructor(under: ContentFiles, over: ReadonlyMap<string, string>) {
    this.folder = under.folder;
    this.#under = under;
    this.#over = new MemoryFiles(under.folder, over);
    this.#names = new Set(over.keys());
  }

  list(): { files: string[]; findings: Finding[] } {
    const { files, findings } = this.#under.list();
    return { files: [...new Set([...files, ...this.#names])].sort(), findings };
  }

  read(file: string): ReadFile {
    return this.#names.has(file) ? this.#over.read(file) : this.#under.read(file);
  }
}
