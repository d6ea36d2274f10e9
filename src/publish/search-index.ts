/** The index of words that the start page searches, made by Pagefind over the finished pages. */
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { close, createIndex } from 'pagefind';
import { anyMark } from '../views/stamps.ts';
import { FileBytes, textOfCharacters } from './file-bytes.ts';
import { searchedPage } from './searched-part.ts';

/** Interfaces of Pagefind's own and languages the site is not in: the start page needs neither. */
const unusedFiles = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\.|^wasm\.unknown\./;

/** Pages taken in, by Pagefind’s own process. */
export interface SearchIndex {
  readonly pages: number;
  /** Writes `pagefind/` into the folder of the pages. */
  write(): Promise<void>;
}

/**
 * Takes in the pages of a folder, beside whatever else is done meanwhile: the work is that of another process. No page
 * may be rewritten until it is done. {@link endSearchIndex} is to be called in the end, whatever comes of it.
 * @throws Error with Pagefind's own messages where it could not; where the searched part of a page holds a mark.
 */
export async function indexPages(folder: string): Promise<SearchIndex> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  assertNone(errors);
  if (!index) throw new Error('The search index could not be begun.');
  let pages = 0;
  const bytes = new FileBytes();
  for (const file of await readdir(folder, { recursive: true })) {
    if (!file.endsWith('.html')) continue;
    const searched = searchedPage(bytes.readCharacters(join(folder, file)));
    if (searched === undefined) continue;
    const content = textOfCharacters(searched);
    // What is known only when all pages are written is not searched for.
    if (content.search(anyMark) >= 0) throw new Error(`The searched part of ${file} holds a mark.`);
    const added = await index.addHTMLFile({ sourcePath: file.replaceAll('\\', '/'), content });
    assertNone(added.errors);
    pages += 1;
  }
  const write = async (): Promise<void> => {
    const { files, errors: writing } = await index.getFiles();
    assertNone(writing);
    for (const file of files) {
      if (unusedFiles.test(file.path)) continue;
      const path = join(folder, 'pagefind', file.path);
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, file.content);
    }
  };
  return { pages, write };
}

/** Ends Pagefind’s process; pages it has not taken in by then are given up. */
export async function endSearchIndex(): Promise<void> {
  await close();
}

function assertNone(errors: readonly string[]): void {
  if (errors.length > 0) throw new Error(`The search index could not be made: ${errors.join('; ')}`);
}
