/** Publishes answers as a static site. */
import { mkdir, readdir } from 'node:fs/promises';
import type { Answers } from '../answers.ts';
import { siteAddress } from '../views/address.ts';
import type { EarlierAnswers } from '../views/changes/compare.ts';
import { movedPages } from '../views/moved-pages.ts';
import { pageViews } from '../views/page-views.ts';
import { profilePath } from '../views/paths.ts';
import { siteView } from '../views/site.ts';
import { putInStore } from '../views/store.ts';
import { contentDate } from './content-date.ts';
import { headerPolicy } from './content-policy.ts';
import { writeEmbedScript } from './embed.ts';
import { makeOffline } from './offline.ts';
import { replaceFolder } from './output-folder.ts';
import { writeProgramFiles } from './program-files.ts';
import { inProduction, keepAstroQuiet, projectRoot, withSlashes } from './project.ts';
import { writeSearchIndex } from './search-index.ts';
import { siteHeaders } from './site-headers.ts';
import { writeSitemap } from './sitemap.ts';
import { stampPages } from './stamp-pages.ts';
import { fromOwnFolder } from './working-folder.ts';

export interface BuildOptions {
  readonly answers: Answers;
  /** The folder to publish into; all of it is replaced. */
  readonly outDir: string;
  /** Where the site is mounted: `/` or `/help/`. */
  readonly basePath: string;
  /** The date the pages say their content is of, ISO 8601; see contentDate where left out. */
  readonly date?: string;
  /** What the feed of changes compares with; without it the feed tells of bench sessions alone. */
  readonly earlier?: EarlierAnswers | undefined;
  /** Told of each stage, one line at a time. */
  readonly log: (line: string) => void;
}

export interface BuiltSite {
  readonly pages: number;
  /** Profiles whose answers differ from the earlier ones; 0 where there are none to compare with. */
  readonly changes: number;
  /** What a server is to send with every file. */
  readonly headers: Readonly<Record<string, string>>;
  /** Old address → new address, base path included. */
  readonly redirects: Readonly<Record<string, string>>;
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
  earlier,
  log,
}: BuildOptions): Promise<BuiltSite> {
  keepAstroQuiet();
  const base = withSlashes(basePath);
  const { build } = await import('astro');
  return replaceFolder(outDir, async (fresh, scratch) => {
    await mkdir(scratch, { recursive: true });
    putInStore({ answers, views: pageViews(answers, base) });
    try {
      await fromOwnFolder(() =>
        inProduction(() =>
          build({ root: projectRoot, outDir: fresh, cacheDir: scratch, base, logLevel: 'error' }),
        ),
      );
    } finally {
      putInStore(undefined);
    }
    const pages = await countPages(fresh);
    log(`${pages} pages written`);
    await writeEmbedScript(fresh);
    const published = { address: siteAddress(siteView(answers).address, base), date };
    const { files, changes } = await writeProgramFiles(fresh, answers, published, earlier);
    log(`${files} files for other programs written`);
    const changed = changes.filter(({ kind }) => kind !== 'gone').map(({ profile }) => profilePath(profile));
    await writeSitemap(fresh, { ...published, changed: new Set(changed) });
    const stamped = await stampPages(fresh, date);
    const { precache, family, leftOut } = await makeOffline(fresh, base, stamped);
    log(`Kept on phones: ${kilobytes(precache)} from the first visit on, up to ${kilobytes(family)} a unit`);
    if (leftOut.length > 0) log(`Too large to be kept: ${leftOut.length} pages, such as ${leftOut[0]}`);
    const { pagesIndexed } = await writeSearchIndex(fresh);
    log(`${pagesIndexed} pages indexed for the search`);
    const headers = siteHeaders(headerPolicy(stamped.policies));
    const redirects = Object.fromEntries(
      movedPages(answers).map(({ id, to }) => [`${base}${id}/`, `${base}${to}`]),
    );
    return { pages, changes: changes.length, headers, redirects };
  });
}

async function countPages(folder: string): Promise<number> {
  const files = await readdir(folder, { recursive: true });
  return files.filter((file) => file.endsWith('.html')).length;
}

function kilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000)} kB`;
}
