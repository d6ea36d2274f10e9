/** No number without a source: every value of every profile page links to readings and to where they come from. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type CodeList, type CodeSentences, entriesOf } from '../../src/views/code-list-format.ts';
import { profilePath } from '../../src/views/paths.ts';
import { launchBrowser, textOf } from './browser.ts';
import { allPages } from './pages.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage();
});
afterAll(() => browser.close());

test('every number cell of a profile’s values links to its readings and names its source', async () => {
  const profiles = allPages().filter((path) => /^profiles\/.+\/$/.test(path) && !path.endsWith('/readings/'));
  let cells = 0;
  for (const path of profiles) {
    await page.goto(`${inject('siteAddress')}${path}`);
    const rows = await page.locator('table.values tbody tr').evaluateAll((elements) =>
      elements.map((row) => ({
        text: row.textContent ?? '',
        value: row.querySelector('td.number a')?.getAttribute('href') ?? '',
        from: [...row.querySelectorAll('td.from a')].map((link) => link.getAttribute('href') ?? ''),
      })),
    );
    for (const row of rows) {
      cells += 1;
      expect(row.value, `${path} ${row.text}`).toMatch(/\/readings\/#r-/);
      expect(
        row.from.some((address) => /\/sources\/.+#session-/.test(address)),
        `${path} ${row.text}`,
      ).toBe(true);
      expect(
        row.from.some((address) => /\/readings\/#r-/.test(address)),
        `${path} ${row.text}`,
      ).toBe(true);
    }
  }
  expect(profiles.length).toBeGreaterThan(5);
  expect(cells).toBeGreaterThan(profiles.length * 3);
});

test('a number of the answer leads to its row, and the row to the reading it rests on', async () => {
  await page.goto(`${inject('siteAddress')}profiles/brasslight/8b0s-i5z/`);
  const number = page.locator('.sentence a', { hasText: ' V' }).first();
  const shown = await textOf(number);
  await number.click();
  const row = page.locator('tr:target');
  expect(await textOf(row.locator('td.number'))).toBe(shown);
  await row.locator('td.number a').click();
  await page.waitForURL('**/readings/#r-*');
  const reading = page.locator('tr:target');
  expect(await reading.count()).toBe(1);
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
  for (const { profile } of entries) {
    const sentence = sentences[profile] ?? '';
    await page.goto(`${inject('siteAddress')}${profilePath(profile)}`);
    const shown = await page.locator('.sentence').textContent();
    expect(shown?.replace(/\s+/g, ' ').trim()).toBe(sentence.replace(/\s+/g, ' '));
  }
});
