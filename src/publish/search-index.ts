/** The index of words that the start page searches, made by Pagefind over the finished pages. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import { anyMark } from '../views/stamps.ts';
import { FileBytes, textOfCharacters } from './file-bytes.ts';
import { searchedPage } from './searched-part.ts';

/** Where the index is, below the folder of the pages. */
export const searchFolder = 'pagefind/';

/** Interfaces of Pagefind's own and languages the site is not in: the start page needs neither. */
const unusedFiles = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\.|^wasm\.unknown\./;

/** An index that is being made, by Pagefind’s own process, beside whatever else is done meanwhile. */
export class SearchIndex {
  readonly #folder: string;
  readonly #index: PagefindIndex;
  readonly #bytes = new FileBytes();
  readonly #seen = new Set<string>();
  /** Pages are taken in one after another, so that the same pages make the same index. */
  #taken: Promise<void> = Promise.resolve();
  #pages = 0;

  private constructor(folder: string, index: PagefindIndex) {
    this.#folder = folder;
    this.#index = index;
  }

  /**
   * Begins the index of a folder. {@link endSearchIndex} is to be called in the end, whatever comes of it.
   * @throws Error with Pagefind's own messages.
   */
  static async begin(folder: string): Promise<SearchIndex> {
    const { index, errors } = await createIndex({ forceLanguage: 'en' });
    assertNone(errors);
    if (!index) throw new Error('The search index could not be begun.');
    return new SearchIndex(folder, index);
  }

  /** Has a finished page taken in, once, after those before it; it may be rewritten when {@link takeAll} has. */
  take(file: string): void {
    if (this.#seen.has(file)) return;
    this.#seen.add(file);
    this.#taken = this.#taken.then(() => this.#takeIn(file));
    // Told of by `takeAll`.
    this.#taken.catch(() => undefined);
  }

  /**
   * Waits for what has been taken, and takes what is left of the pages; gives how many are searched.
   * @throws Error with Pagefind's own messages; where the searched part of a page holds a mark.
   */
  async takeAll(pages: readonly string[]): Promise<number> {
    for (const page of pages) this.take(page);
    await this.#taken;
    return this.#pages;
  }

  /** Writes the index into its folder. */
  async write(): Promise<void> {
    const { files, errors } = await this.#index.getFiles();
    assertNone(errors);
    for (const file of files) {
      if (unusedFiles.test(file.path)) continue;
      const path = join(this.#folder, searchFolder, file.path);
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, file.content);
    }
  }

  async #takeIn(file: string): Promise<void> {
    const searched = searchedPage(this.#bytes.readCharacters(join(this.#folder, file)));
    if (searched === undefined) return;
    const content = textOfCharacters(searched);
    // What is known only when all pages are written is not searched for.
    if (content.search(anyMark) >= 0) throw new Error(`The searched part of ${file} holds a mark.`);
    const { errors } = await this.#index.addHTMLFile({ sourcePath: file, content });
    assertNone(errors);
    this.#pages += 1;
  }
}

/** Ends Pagefind’s process; pages it has not taken in by then are given up. */
export async function endSearchIndex(): Promise<void> {
  await close();
}

function assertNone(errors: readonly string[]): void {
  if (errors.length > 0) throw new Error(`The search index could not be made: ${errors.join('; ')}`);
}
