/** Publishes answers as a static site. */
import { mkdir, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { type Answers, answersSaidAnew } from '../answers.ts';
import { siteAddress } from '../views/address.ts';
import type { SinceRevision } from '../views/changes/compare.ts';
import { languageFolder, languagesOf } from '../views/languages.ts';
import { movedPages } from '../views/moved-pages.ts';
import { pageContents } from '../views/page-views.ts';
import { profilePath } from '../views/paths.ts';
import { siteView } from '../views/site.ts';
import { inLanguage, type Language } from '../words/index.ts';
import { gatherGarbageLater } from './build-memory.ts';
import { contentDate } from './content-date.ts';
import { headerPolicy, type PolicyDigests } from './content-policy.ts';
import { writeEmbedScript } from './embed.ts';
import { makeOffline } from './offline.ts';
import { replaceFolder } from './output-folder.ts';
import { ProgramFiles } from './program-files.ts';
import { keepAstroQuiet, withSlashes } from './project.ts';
import { renderPages } from './render-pages.ts';
import { endSearchIndex, SearchIndex } from './search-index.ts';
import { siteHeaders } from './site-headers.ts';
import { writeRobots, writeSitemap } from './sitemap.ts';
import { stampPages } from './stamp-pages.ts';

export interface BuildOptions {
  readonly answers: Answers;
  /** The folder to publish into; all of it is replaced. */
  readonly outDir: string;
  /** Where the site is mounted: `/` or `/help/`. */
  readonly basePath: string;
  /** The date the pages say their content is of, ISO 8601; see contentDate where left out. */
  readonly date?: string;
  /** What the feed of changes tells of; without it, of bench sessions alone. */
  readonly since?: SinceRevision | undefined;
  /** Told of each stage, one line at a time. */
  readonly log: (line: string) => void;
}

export interface BuiltSite {
  readonly pages: number;
  /** Profiles whose answers differ from the earlier ones; 0 where there are none to compare with. */
  readonly changes: number;
  /** What a server is to send with every file. */
  readonly headers: Readonly<Record<string, string>>;
  /** Where each language is below the base path, the first first: `['', 'es/']`. */
  readonly folders: readonly string[];
  /** Old address → new address, base path included. */
  readonly redirects: Readonly<Record<string, string>>;
}

/**
 * Builds the site into a temporary folder, indexes its words, and then swaps it in: a build that fails leaves
 * the last good site as it was. Each further language of site.yaml is a whole site of its own below its tag.
 * @throws CannotRun where the output folder holds something else; the error of Astro or Pagefind otherwise.
 */
export async function buildSite(options: BuildOptions): Promise<BuiltSite> {
  const { answers, outDir } = options;
  keepAstroQuiet();
  gatherGarbageLater();
  const base = withSlashes(options.basePath);
  const languages = languagesOf(answers);
  return replaceFolder(outDir, async (fresh, scratch) => {
    const built: BuiltPart[] = [];
    for (const [at, language] of languages.entries()) {
      const folder = languageFolder(languages, language.tag);
      if (languages.length > 1) options.log(language.name);
      built.push(
        await inLanguage(language, () =>
          buildLanguage(language, {
            ...options,
            answers: at === 0 ? answers : answersSaidAnew(answers),
            folder: resolve(fresh, folder),
            scratch: join(scratch, language.tag),
            base: `${base}${folder}`,
            languages,
          }),
        ),
      );
    }
    await writeRobots(
      fresh,
      built.map(({ address }) => address),
    );
    return {
      pages: built.reduce((sum, { pages }) => sum + pages, 0),
      changes: built[0]?.changes ?? 0,
      folders: languages.map(({ tag }) => languageFolder(languages, tag)),
      headers: siteHeaders(headerPolicy(built.flatMap(({ policies }) => policies))),
      redirects: Object.assign({}, ...built.map(({ redirects }) => redirects)),
    };
  });
}

/** The site in one language. */
interface BuiltPart extends Pick<BuiltSite, 'pages' | 'changes' | 'redirects'> {
  readonly address: string;
  readonly policies: readonly PolicyDigests[];
}

interface LanguageOptions extends Pick<BuildOptions, 'answers' | 'date' | 'since' | 'log'> {
  readonly folder: string;
  readonly scratch: string;
  /** Where this language is mounted, with a slash at both ends. */
  readonly base: string;
  readonly languages: readonly Language[];
}

async function buildLanguage(
  language: Language,
  {
    answers,
    date = contentDate(process.env, new Date()),
    since,
    log,
    folder,
    scratch,
    base,
    languages,
  }: LanguageOptions,
): Promise<BuiltPart> {
  const address = siteAddress(siteView(answers).address, base, languageFolder(languages, language.tag));
  const published = { address, date };
  const files = await ProgramFiles.of(folder, answers, published, since);
  try {
    const index = await SearchIndex.begin(folder);
    await mkdir(scratch, { recursive: true });
    // When a profile’s page begins, the page before it is written, and can be taken into the index meanwhile; its output is
    // still at hand for the files about it.
    let before: string | undefined;
    const profileBegins = (profile: string): void => {
      if (before !== undefined) {
        files.writeAbout(before);
        index.take(`${profilePath(before)}index.html`);
      }
      before = profile;
    };
    await renderPages(pageContents(answers, base), { folder, scratch, base, language, profileBegins });
    const pages = await pagesIn(folder);
    log(`${pages.length} pages written`);
    log(`${await files.writeRest()} files of data written`);
    await writeEmbedScript(folder, language);
    const changes = since?.changes() ?? [];
    const changed = changes.filter(({ kind }) => kind !== 'gone').map(({ profile }) => profilePath(profile));
    await writeSitemap(folder, pages, { ...published, changed: new Set(changed) });
    log(`${await index.takeAll(pages)} pages taken into the search`);
    // Nothing of the site names the files of the index by what they hold.
    const [policies] = await together(finishPages(folder, date, base, log), index.write());
    return {
      pages: pages.length,
      changes: changes.length,
      redirects: redirectsOf(answers, base),
      address,
      policies,
    };
  } finally {
    await endSearchIndex();
  }
}

/** Puts into finished pages what is known only now, and makes the site readable without a network; gives what may run in pages. */
async function finishPages(
  folder: string,
  date: string,
  base: string,
  log: BuildOptions['log'],
): Promise<readonly PolicyDigests[]> {
  const stamped = await stampPages(folder, date);
  const { precache, family, leftOut } = await makeOffline(folder, base, stamped);
  log(`Kept on phones: ${kilobytes(precache)} from the first visit on, up to ${kilobytes(family)} a unit`);
  if (leftOut.length > 0) log(`Too large to be kept: ${leftOut.length} pages, such as ${leftOut[0]}`);
  return stamped.policies;
}

/** Both results; where one fails, only once the other has ended too, so that nothing is written into a folder given up. */
async function together<One, Other>(one: Promise<One>, other: Promise<Other>): Promise<[One, Other]> {
  await Promise.allSettled([one, other]);
  return [await one, await other];
}

/** Old address → new address of the pages of a site mounted at `base`. */
function redirectsOf(answers: Answers, base: string): BuiltSite['redirects'] {
  return Object.fromEntries(movedPages(answers).map(({ id, to }) => [`${base}${id}/`, `${base}${to}`]));
}

/** The pages of a folder, in an order that is the same everywhere. */
async function pagesIn(folder: string): Promise<string[]> {
  const files = await readdir(folder, { recursive: true });
  return files
    .filter((file) => file.endsWith('.html'))
    .map((file) => file.replaceAll('\\', '/'))
    .sort();
}

function kilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000)} kB`;
}
