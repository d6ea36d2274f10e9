/** Every link within the built site leads to a file, and every anchor to an id on its page. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { basePath } from './editions.ts';
import { allPages } from './pages.ts';

interface ReadPage {
  readonly ids: ReadonlySet<string>;
  readonly links: readonly string[];
}

const read = new Map<string, ReadPage>();

function readPage(path: string): ReadPage {
  const known = read.get(path);
  if (known) return known;
  const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
  const html = readFileSync(join(inject('siteFolder'), file), 'utf8');
  const page = {
    ids: new Set([...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1] ?? '')),
    links: [...html.matchAll(/\s(?:href|src|action|data-codes|data-sentences)="([^"]+)"/g)].map((match) =>
      (match[1] ?? '').replaceAll('&amp;', '&'),
    ),
  };
  read.set(path, page);
  return page;
}

test('every internal link and anchor resolves', () => {
  const folder = inject('siteFolder');
  const broken: string[] = [];
  let checked = 0;
  for (const path of allPages()) {
    for (const link of readPage(path).links) {
      const url = new URL(link, `http://site.invalid${basePath}${path}`);
      if (url.host !== 'site.invalid') continue;
      checked += 1;
      const target = decodeURIComponent(url.pathname);
      if (!target.startsWith(basePath)) {
        broken.push(`${path}: ${link} leaves the base path`);
        continue;
      }
      const inside = target.slice(basePath.length);
      const file = join(folder, inside);
      const isPage = inside === '' || inside.endsWith('/') || inside.endsWith('.html');
      const exists =
        isPage && !inside.endsWith('.html')
          ? existsSync(join(file, 'index.html'))
          : existsSync(file) && statSync(file).isFile();
      if (!exists) broken.push(`${path}: ${link} leads nowhere`);
      else if (
        url.hash !== '' &&
        isPage &&
        !readPage(inside).ids.has(decodeURIComponent(url.hash.slice(1)))
      ) {
        broken.push(`${path}: ${link} has no such anchor`);
      }
    }
  }
  expect(checked).toBeGreaterThan(1000);
  expect([...new Set(broken)].slice(0, 20)).toEqual([]);
});

test('no id stands twice on a page', () => {
  for (const path of allPages()) {
    const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
    const html = readFileSync(join(inject('siteFolder'), file), 'utf8');
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    expect(
      ids.filter((id, index) => ids.indexOf(id) !== index),
      path,
    ).toEqual([]);
  }
});

test('every page of the site can be reached from the start page', () => {
  const reached = new Set(['']);
  const queue = [''];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    for (const link of readPage(path).links) {
      const url = new URL(link, `http://site.invalid${basePath}${path}`);
      if (url.host !== 'site.invalid' || !url.pathname.endsWith('/')) continue;
      const inside = url.pathname.slice(basePath.length);
      if (!reached.has(inside)) {
        reached.add(inside);
        queue.push(inside);
      }
    }
  }
  expect(
    allPages().filter((path) => !/(?:^|\/)(?:404\.html|offline\/)$/.test(path) && !reached.has(path)),
  ).toEqual([]);
});

test('each page of an entry leads to where it can be corrected', () => {
  // Each further language is a site of its own below its tag.
  const entryPage =
    /^(?:[a-z]{2}\/)?(?:units|profiles|plans|tables|guides|sources)\/(?!.*\/(?:bench-)?sheet\/$)./;
  const missing = allPages().filter((path) => {
    const links = readPage(path).links.filter((link) => link.includes('/help/edit/main/content/'));
    return entryPage.test(path) !== links.length > 0;
  });
  expect(missing).toEqual([]);
});
