/** The index of words that the start page searches, made by Pagefind over the finished pages. */
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { close, createIndex } from 'pagefind';
import { FileBytes } from './file-bytes.ts';
import { searchedPage } from './searched-part.ts';

/** Interfaces of Pagefind's own and languages the site is not in: the start page needs neither. */
const unusedFiles = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\.|^wasm\.unknown\./;

/**
 * Writes `pagefind/` into a folder of finished pages.
 * @throws Error with Pagefind's own messages where it could not.
 */
export async function writeSearchIndex(folder: string): Promise<{ pagesIndexed: number }> {
  try {
    const { index, errors } = await createIndex({ forceLanguage: 'en' });
    assertNone(errors);
    if (!index) throw new Error('The search index could not be begun.');
    let pagesIndexed = 0;
    const bytes = new FileBytes();
    for (const file of await readdir(folder, { recursive: true })) {
      if (!file.endsWith('.html')) continue;
      const content = searchedPage(bytes.read(join(folder, file)).toString());
      if (content === undefined) continue;
      const added = await index.addHTMLFile({ sourcePath: file.replaceAll('\\', '/'), content });
      assertNone(added.errors);
      pagesIndexed += 1;
    }
    const { files, errors: writing } = await index.getFiles();
    assertNone(writing);
    for (const file of files) {
      if (unusedFiles.test(file.path)) continue;
      const path = join(folder, 'pagefind', file.path);
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, file.content);
    }
    return { pagesIndexed };
  } finally {
    await close();
  }
}

function assertNone(errors: readonly string[]): void {
  if (errors.length > 0) throw new Error(`The search index could not be made: ${errors.join('; ')}`);
}
