/** What crawlers look for: the list of pages (sitemaps.org, protocol 0.9) and robots.txt. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { element, xmlText } from '../views/xml.ts';

/** The protocol allows as many in one file; more are spread over several. */
const mostAddresses = 50_000;

const namespace = { xmlns: 'http://www.sitemaps.org/schemas/sitemap/0.9' };

/** Pages that say so themselves (`noindex`): shown in place of others. */
const unlisted: ReadonlySet<string> = new Set(['404.html', 'offline/index.html']);

export interface SitemapPages {
  /** Of the start page, with a slash at the end. */
  readonly address: string;
  /** Paths of pages known to say something else since an earlier revision. */
  readonly changed: ReadonlySet<string>;
  /** The day the content is of, ISO 8601: that of the changes. */
  readonly date: string;
}

/** Lists every page of a finished site, by its file, in `sitemap.xml`. */
export async function writeSitemap(
  folder: string,
  files: readonly string[],
  pages: SitemapPages,
): Promise<void> {
  const paths = files
    .filter((file) => !unlisted.has(file))
    .map((file) => file.replace(/(^|\/)index\.html$/, '$1'))
    .sort();
  for (const [name, text] of sitemapFiles(paths, pages)) await writeFile(join(folder, name), text);
}

/** Writes the robots.txt that leads to the lists of pages, one for each language. */
export async function writeRobots(folder: string, addresses: readonly string[]): Promise<void> {
  const lists = addresses.map((address) => `Sitemap: ${address}sitemap.xml\n`).join('');
  await writeFile(join(folder, 'robots.txt'), `User-agent: *\nAllow: /\n\n${lists}`);
}

/**
 * The files by name: `sitemap.xml` alone, or as an index of the others. Nothing in the content says when a page last
 * changed, so a page has a last modification only where a comparison with an earlier revision showed that it did.
 */
export function sitemapFiles(
  paths: readonly string[],
  { address, changed, date }: SitemapPages,
  most = mostAddresses,
): Map<string, string> {
  const listed = (some: readonly string[]): string =>
    xmlText(
      element(
        'urlset',
        namespace,
        some.map((path) =>
          element('url', {}, [
            element('loc', {}, new URL(path, address).href),
            ...(changed.has(path) ? [element('lastmod', {}, date)] : []),
          ]),
        ),
      ),
    );
  if (paths.length <= most) return new Map([['sitemap.xml', listed(paths)]]);
  const parts = Array.from({ length: Math.ceil(paths.length / most) }, (_, index) => ({
    name: `sitemap-${index + 1}.xml`,
    text: listed(paths.slice(index * most, (index + 1) * most)),
  }));
  const index = parts.map(({ name }) => element('sitemap', {}, [element('loc', {}, `${address}${name}`)]));
  return new Map([
    ['sitemap.xml', xmlText(element('sitemapindex', namespace, index))],
    ...parts.map(({ name, text }) => [name, text] as const),
  ]);
}
