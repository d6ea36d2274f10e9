/** The list of pages, by the protocol of sitemaps.org (version 0.9), its limits from memory. */
import { expect, test } from 'vitest';
import { sitemapFiles } from '../../src/publish/sitemap.ts';

const pages = {
  address: 'https://shop.example/help/',
  changed: new Set(['profiles/a/b/']),
  date: '2026-03-01',
};
const locations = (text = ''): string[] =>
  [...text.matchAll(/<loc>([^<]+)<\/loc>/g)].map(([, loc]) => loc ?? '');

test('whole addresses, and a last modification only of what is known to have changed', () => {
  const files = sitemapFiles(['', 'profiles/a/b/', 'profiles/a/c/'], pages);
  expect([...files.keys()]).toEqual(['sitemap.xml']);
  const text = files.get('sitemap.xml') ?? '';
  expect(text).toContain('<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">');
  expect(locations(text)).toEqual([
    'https://shop.example/help/',
    'https://shop.example/help/profiles/a/b/',
    'https://shop.example/help/profiles/a/c/',
  ]);
  expect([...text.matchAll(/<lastmod>(.+)<\/lastmod>/g)].map(([, day]) => day)).toEqual(['2026-03-01']);
  expect(text.indexOf('<lastmod>')).toBeGreaterThan(text.indexOf('profiles/a/b/'));
  expect(text.indexOf('<lastmod>')).toBeLessThan(text.indexOf('profiles/a/c/'));
});

test('more pages than one file may list are spread over several, each of them in the index', () => {
  const paths = Array.from({ length: 7 }, (_, index) => `p/${index}/`);
  const files = sitemapFiles(paths, pages, 3);
  expect(locations(files.get('sitemap.xml'))).toEqual(
    [1, 2, 3].map((n) => `https://shop.example/help/sitemap-${n}.xml`),
  );
  const listed = [1, 2, 3].flatMap((n) => locations(files.get(`sitemap-${n}.xml`)));
  expect(listed).toEqual(paths.map((path) => `https://shop.example/help/${path}`));
});
