/** Publishes answers as a static site. */
import { mkdir, readdir } from 'node:fs/promises';
import type { Answers } from '../answers.ts';
import { putAnswersInStore } from '../views/store.ts';
import { replaceFolder } from './output-folder.ts';
import { keepAstroQuiet, projectRoot, withSlashes } from './project.ts';
import { writeSearchIndex } from './search-index.ts';

export interface BuildOptions {
  readonly answers: Answers;
  /** The folder to publish into; all of it is replaced. */
  readonly outDir: string;
  /** Where the site is mounted: `/` or `/help/`. */
  readonly basePath: string;
  /** Told of each stage, one line at a time. */
  readonly log: (line: string) => void;
}

/**
 * Builds the site into a temporary folder, indexes its words, and then swaps it in: a build that fails leaves
 * the last good site as it was.
 * @throws CannotRun where the output folder holds something else; the error of Astro or Pagefind otherwise.
 */
export async function buildSite({
  answers,
  outDir,
  basePath,
  log,
}: BuildOptions): Promise<{ pages: number }> {
  keepAstroQuiet();
  const { build } = await import('astro');
  return replaceFolder(outDir, async (fresh, scratch) => {
    await mkdir(scratch, { recursive: true });
    putAnswersInStore(answers);
    try {
      await build({
        root: projectRoot,
        outDir: fresh,
        cacheDir: scratch,
        base: withSlashes(basePath),
        logLevel: 'error',
      });
    } finally {
      putAnswersInStore(undefined);
    }
    const pages = await countPages(fresh);
    log(`${pages} pages written`);
    const { pagesIndexed } = await writeSearchIndex(fresh);
    log(`${pagesIndexed} pages indexed for the search`);
    return { pages };
  });
}

async function countPages(folder: string): Promise<number> {
  const files = await readdir(folder, { recursive: true });
  return files.filter((file) => file.endsWith('.html')).length;
}
