/** No number without a source: every value of every profile page links to readings and to where they come from. */
import type { Browser, JSHandle, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type CodeList, type CodeSentences, entriesOf } from '../../src/views/code-list-format.ts';
import { profilePath } from '../../src/views/paths.ts';
import { counted, follow, launchBrowser, says, textOf } from './browser.ts';
import { allPages } from './pages.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage({ serviceWorkers: 'block' });
});
afterAll(() => browser.close());

/** Pages as the browser takes them, without showing any: they are many. */
async function parsedPages(paths: readonly string[]): Promise<JSHandle<Document[]>> {
  await page.goto(inject('siteAddress'));
  return page.evaluateHandle(
    (urls) =>
      Promise.all(
        urls.map(async (url) =>
          new DOMParser().parseFromString(await (await fetch(url)).text(), 'text/html'),
        ),
      ),
    paths.map((path) => `${inject('siteAddress')}${path}`),
  );
}

test('every number cell of a profile’s values links to its readings and names its source', async () => {
  const profiles = allPages().filter((path) => /^profiles\/.+\/$/.test(path) && !path.endsWith('/readings/'));
  const rowsOf = await (await parsedPages(profiles)).evaluate((all) =>
    all.map((one) =>
      [...one.querySelectorAll('table.values tbody tr')].map((row) => ({
        text: row.textContent ?? '',
        value: row.querySelector('td.number a')?.getAttribute('href') ?? '',
        from: [...row.querySelectorAll('td.from a')].map((link) => link.getAttribute('href') ?? ''),
      })),
    ),
  );
  let cells = 0;
  for (const [at, rows] of rowsOf.entries()) {
    for (const { text, value, from } of rows) {
      const where = `${profiles[at]} ${text}`;
      cells += 1;
      expect(value, where).toMatch(/\/readings\/#r-/);
      expect(from, where).toContainEqual(expect.stringMatching(/\/sources\/.+#session-/));
      expect(from, where).toContainEqual(expect.stringMatching(/\/readings\/#r-/));
    }
  }
  expect(profiles.length).toBeGreaterThan(5);
  expect(cells).toBeGreaterThan(profiles.length * 3);
});

test('a number of the answer leads to its row, and the row to the reading it rests on', async () => {
  await page.goto(`${inject('siteAddress')}profiles/brasslight/8b0s-i5z/`);
  const number = page.locator('.sentence a', { hasText: ' V' }).first();
  const shown = await textOf(number);
  await follow(number, /#value-/);
  const row = page.locator('tr:target');
  await says(row.locator('td.number')).toBe(shown);
  await follow(row.locator('td.number a'), /\/readings\/#r-/);
  const reading = page.locator('tr:target');
  await counted(reading).toBe(1);
  // The value is a mean about this reading: they agree to within a tenth.
  const cells = await reading.locator('td').allTextContents();
  expect(Math.abs(Number(cells[3]) / Number.parseFloat(shown) - 1)).toBeLessThan(0.1);
});

test('the sentence of the lookup is the sentence of the page', async () => {
  const file = async (name: string): Promise<unknown> =>
    (await page.request.get(`${inject('siteAddress')}${name}`)).json();
  const entries = entriesOf((await file('codes.json')) as CodeList);
  const sentences = (await file('code-sentences.json')) as CodeSentences;
  expect(entries.length).toBeGreaterThan(5);
  const pages = await parsedPages(entries.map(({ profile }) => profilePath(profile)));
  const shown = await pages.evaluate((all) =>
    all.map((one) => one.querySelector('.sentence')?.textContent ?? ''),
  );
  const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();
  for (const [at, { profile }] of entries.entries()) {
    expect(plain(shown[at] ?? ''), profile).toBe(plain(sentences[profile] ?? 'no sentence'));
  }
});
