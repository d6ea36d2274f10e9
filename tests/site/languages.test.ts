/** A page is the same page in each language: only what is read differs, not what it is built of. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { pagesOfLanguage } from './pages.ts';

/** The classes of each kind of tag. */
async function classesOf(page: string): Promise<Set<string>> {
  const file = page.endsWith('.html') ? page : `${page}index.html`;
  const html = await readFile(join(inject('siteFolder'), file), 'utf8');
  const tags = html.replace(/<script[\s\S]*?<\/script>/g, '').matchAll(/<([a-z]\w*)[^>]*? class="([^"]*)"/g);
  return new Set([...tags].map(([, tag, classes]) => `${tag}.${classes}`));
}

test('no class of a page is said in its language', async () => {
  const pages = pagesOfLanguage();
  expect(pagesOfLanguage('es/')).toEqual(pages);
  expect(pages.length).toBeGreaterThan(100);
  for (const page of pages) {
    expect(await classesOf(`es/${page}`), page).toEqual(await classesOf(page));
  }
});
