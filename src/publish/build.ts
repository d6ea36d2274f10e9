/** Publishes answers as a static site. */
import { mkdir, readdir } from 'node:fs/promises';
import type { Answers } from '../answers.ts';
import { putAnswersInStore } from '../views/store.ts';
import { contentDate } from './content-date.ts';
import { writeEmbedScript } from './embed.ts';
import { makeOffline } from './offline.ts';
import { replaceFolder } from './output-folder.ts';
import { inProduction, keepAstroQuiet, projectRoot, withSlashes } from './project.ts';
import { writeSearchIndex } from './search-index.ts';

export interface BuildOptions {
  readonly answers: Answers;
  /** The folder to publish into; all of it is replaced. */
  readonly outDir: string;
  /** Where the site is mounted: `/` or `/help/`. */
  readonly basePath: string;
  /** The date the pages say their content is of, ISO 8601; see contentDate where left out. */
  readonly date?: string;
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
  date = contentDate(process.env, new Date()),
  log,
}: BuildOptions): Promise<{ pages: number }> {
  keepAstroQuiet();
  const base = withSlashes(basePath);
  const { build } = await import('astro');
  return replaceFolder(outDir, async (fresh, scratch) => {
    await mkdir(scratch, { recursive: true });
    putAnswersInStore(answers);
    try {
      await inProduction(() =>
        build({ root: projectRoot, outDir: fresh, cacheDir: scratch, base, logLevel: 'error' }),
      );
    } finally {
      putAnswersInStore(undefined);
    }
    const pages = await countPages(fresh);
    log(`${pages} pages written`);
    await writeEmbedScript(fresh);
    const { precache, family, leftOut } = await makeOffline(fresh, base, date);
    log(`Kept on phones: ${kilobytes(precache)} from the first visit on, up to ${kilobytes(family)} a unit`);
    if (leftOut.length > 0) log(`Too large to be kept: ${leftOut.length} pages, such as ${leftOut[0]}`);
    const { pagesIndexed } = await writeSearchIndex(fresh);
    log(`${pagesIndexed} pages indexed for the search`);
    return { pages };
  });
}

async function countPages(folder: string): Promise<number> {
  const files = await readdir(folder, { recursive: true });
  return files.filter((file) => file.endsWith('.html')).length;
}

function kilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000)} kB`;
}
