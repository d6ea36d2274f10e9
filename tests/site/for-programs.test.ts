/** What machines read of the built site: every address in it is whole, and leads to what is there. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, inject, test } from 'vitest';
import { basePath } from './editions.ts';
import { pagesOfLanguage } from './pages.ts';

const address = `https://help.quillhaven.example${basePath}`;
const read = (path: string): string => readFileSync(join(inject('siteFolder'), path), 'utf8');
const htmlOf = (path: string): string => read(path === '' || path.endsWith('/') ? `${path}index.html` : path);
const contentOf = (html: string, property: string): string | undefined =>
  new RegExp(`<meta (?:property|name)="${property}" content="([^"]*)"`).exec(html)?.[1];
const standIns = new Set(['404.html', 'offline/']);

/** Whether an address of the site leads to a page or file of it. */
function exists(url: string): boolean {
  if (!url.startsWith(address)) return false;
  const path = decodeURIComponent(new URL(url).pathname).slice(basePath.length);
  return existsSync(
    join(inject('siteFolder'), path === '' || path.endsWith('/') ? `${path}index.html` : path),
  );
}

interface Linked {
  readonly '@type': string;
  readonly [key: string]: unknown;
}

function linkedOf(html: string): Linked[] {
  const text = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(html)?.[1];
  return text === undefined ? [] : (JSON.parse(text) as { '@graph': Linked[] })['@graph'];
}

describe.each(['', 'es/'])('in the language at “%s”', (folder) => {
  const here = `${address}${folder}`;

  test('every page names its own address, but for those that stand in for others', () => {
    for (const path of pagesOfLanguage(folder)) {
      const html = htmlOf(`${folder}${path}`);
      const canonical = /<link rel="canonical" href="([^"]+)"/.exec(html)?.[1];
      if (standIns.has(path)) {
        expect(canonical, path).toBeUndefined();
        expect(contentOf(html, 'robots'), path).toBe('noindex');
      } else {
        expect(canonical, path).toBe(`${here}${path}`);
        expect(contentOf(html, 'og:url'), path).toBe(canonical);
      }
      expect(contentOf(html, 'og:title'), path).toBeTruthy();
      expect(contentOf(html, 'og:description'), path).toBe(contentOf(html, 'description'));
    }
  });

  test('the picture of each page is there, of the size told', async () => {
    const pictures = new Set(
      pagesOfLanguage(folder).map((path) => contentOf(htmlOf(`${folder}${path}`), 'og:image') ?? ''),
    );
    // The site, two kinds of profile, and every unit.
    expect(pictures.size).toBe(3 + readdirSync(join(inject('siteFolder'), `${folder}previews/units`)).length);
    for (const picture of pictures) {
      expect(exists(picture), picture).toBe(true);
      const { width, height } = await sharp(
        join(inject('siteFolder'), picture.slice(address.length)),
      ).metadata();
      expect([width, height]).toEqual([1200, 630]);
    }
  });

  test('the sitemap lists every page that has an address, and robots.txt leads there', () => {
    const listed = [...read(`${folder}sitemap.xml`).matchAll(/<loc>([^<]+)<\/loc>/g)].map(([, loc]) => loc);
    const pages = pagesOfLanguage(folder).filter((path) => !standIns.has(path));
    expect(listed).toEqual(pages.map((path) => `${here}${path}`));
    expect(read('robots.txt')).toContain(`Sitemap: ${here}sitemap.xml`);
  });

  test('linked data can be read, and its addresses lead somewhere', () => {
    const kinds = new Map<string, number>();
    const follow = (value: unknown, path: string): void => {
      if (typeof value === 'string' && value.startsWith('https://help.') && !value.includes('{')) {
        expect(exists(value), `${path}: ${value}`).toBe(true);
      } else if (typeof value === 'object' && value !== null) {
        for (const inner of Object.values(value)) follow(inner, path);
      }
    };
    for (const path of pagesOfLanguage(folder)) {
      const html = htmlOf(`${folder}${path}`);
      const things = linkedOf(html);
      for (const thing of things) {
        kinds.set(thing['@type'], (kinds.get(thing['@type']) ?? 0) + 1);
        follow(thing, path);
      }
      // Where the page shows the way to it, so does its linked data.
      expect(
        things.some((thing) => thing['@type'] === 'BreadcrumbList'),
        path,
      ).toBe(html.includes('class="crumbs"'));
    }
    expect([...kinds.keys()].sort()).toEqual(['BreadcrumbList', 'Dataset', 'TechArticle', 'WebSite']);
    expect(kinds.get('WebSite')).toBe(1);
    expect(kinds.get('Dataset')).toBeGreaterThan(20);
  });
});

test('the values in linked data are printed on the page', () => {
  const profiles = pagesOfLanguage().filter((path) => /^profiles\/[^/]+\/[^/]+\/$/.test(path));
  let values = 0;
  for (const path of profiles) {
    const html = htmlOf(path);
    const text = html.slice(html.indexOf('<main')).replace(/<[^>]+>/g, '');
    for (const thing of linkedOf(html)) {
      for (const { description } of (thing.variableMeasured ?? []) as { description: string }[]) {
        values += 1;
        expect(text.includes(description.replace(/ \(.*\)$/, '')), `${path}: ${description}`).toBe(true);
      }
    }
  }
  expect(values).toBeGreaterThan(100);
});

test('the documents name pages that are there', () => {
  const documents = readdirSync(join(inject('siteFolder'), 'api'), {
    recursive: true,
    encoding: 'utf8',
  }).filter((file) => file.endsWith('.json'));
  expect(documents.length).toBeGreaterThan(40);
  for (const document of documents) {
    const text = read(`api/${document.replaceAll('\\', '/')}`);
    for (const [, url] of text.matchAll(/"(https:\/\/help\.[^"]+)"/g)) {
      // The server of openapi.json is the folder the documents are in, with no page of its own.
      if (url !== `${address}api/v1`) expect(exists(url ?? ''), `${document}: ${url}`).toBe(true);
    }
  }
});

test('the tables of the data package are there, of the size and digest told', () => {
  const { resources } = JSON.parse(read('data/datapackage.json')) as {
    resources: { path: string; bytes: number; hash: string; sources?: { path: string }[] }[];
  };
  expect(resources.length).toBeGreaterThan(6);
  for (const { path, bytes, hash, sources = [] } of resources) {
    const content = readFileSync(join(inject('siteFolder'), 'data', path));
    expect(content.length, path).toBe(bytes);
    expect(`sha256:${createHash('sha256').update(content).digest('hex')}`, path).toBe(hash);
    for (const source of sources) expect(exists(source.path), source.path).toBe(true);
  }
  const page = htmlOf('data/');
  for (const { path } of resources) expect(page).toContain(`href="${basePath}data/${path}"`);
});

test.each([
  ['', 'What changed'],
  ['es/', 'Qué ha cambiado'],
])('the feed at “%s” leads to pages, and is named on every page', (folder, title) => {
  const links = [...read(`${folder}changes.atom`).matchAll(/href="([^"]+)"/g)].map(([, url]) => url ?? '');
  expect(links.length).toBeGreaterThan(5);
  for (const url of links) expect(exists(url), url).toBe(true);
  for (const path of pagesOfLanguage(folder)) {
    expect(htmlOf(`${folder}${path}`), path).toContain(
      `type="application/atom+xml" title="${title}" href="${basePath}${folder}changes.atom"`,
    );
  }
});

test('each page names itself in every language, and those pages name it back', () => {
  const namedBy = (path: string): string[] =>
    [...htmlOf(path).matchAll(/<link rel="alternate" hreflang="(\w+)" href="([^"]+)"/g)].map(
      ([, tag, url]) => `${tag} ${url}`,
    );
  for (const path of pagesOfLanguage().filter((one) => !standIns.has(one))) {
    const both = [`en ${address}${path}`, `es ${address}es/${path}`];
    expect(namedBy(path), path).toEqual(both);
    expect(namedBy(`es/${path}`), path).toEqual(both);
  }
});
