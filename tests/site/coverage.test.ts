/** What is not measured yet, and the sheet for the bench, in a real browser and on paper. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launchBrowser, textOf } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const address = (path: string): string => `${inject('siteAddress')}${path}`;

test('on a phone every row says its numbers in words, its bar being for eyes only', async () => {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
  await page.goto(address('coverage/'));
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  const rows = page.locator('.coverage tbody tr');
  expect(await rows.count()).toBeGreaterThan(60);
  for (const row of await rows.all()) {
    const counts = await row.locator('td.number').allTextContents();
    const all = counts.reduce((sum, text) => sum + Number.parseInt(text, 10), 0);
    expect(all, await textOf(row)).toBeGreaterThan(0);
    const bar = row.locator('.coverage-bar');
    if ((await bar.count()) > 0) expect(await bar.getAttribute('aria-hidden')).toBe('true');
  }
  // Patterns, not colours: one ink, and the same hatched.
  const fills = await page
    .locator('.coverage-bar rect')
    .evaluateAll((parts) => [...new Set(parts.map((part) => getComputedStyle(part).fill))].sort());
  expect(fills).toEqual(['rgb(21, 24, 27)', 'url("#coverage-hatch")']);
  await page.context().close();
});

test('what is wanted most leads to the value, to the answers that wait, and to the sheet', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(address('coverage/'));
  const first = page.locator('.wanted > li').first();
  expect(await textOf(first)).toMatch(/would settle\s+\d+\sanswers/);
  const waiting = await first.locator('.wanted-answers a').count();
  expect(await textOf(first.locator('.wanted-count'))).toContain(`settle ${waiting}\u00a0answers`);
  await first.locator('h3 a').click();
  expect(await page.locator(':target').count()).toBe(1);
  await page.goBack();
  await page.getByRole('link', { name: 'Sheet for the bench' }).first().click();
  await page.waitForURL('**/coverage/bench-sheet/');
  await page.context().close();
});

test('the printed rows are those of the file', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(address('coverage/bench-sheet/'));
  const link = page.getByRole('link', { name: /rows as CSV/ });
  const file = await (await fetch(new URL((await link.getAttribute('href')) ?? '', page.url()))).text();
  const rows = file.trimEnd().split('\n').slice(1);
  expect(await page.locator('.bench-block tbody tr').count()).toBe(rows.length);
  expect(await textOf(link)).toContain(`The ${rows.length}`);
  const blanks = page.locator('.bench-block td.blank');
  expect(await blanks.count()).toBe(2 * rows.length);
  expect((await blanks.allTextContents()).join('')).toBe('');
  await page.context().close();
});

for (const { format, widthMm } of [
  { format: 'A4', widthMm: 210 },
  { format: 'Letter', widthMm: 216 },
] as const) {
  test(`on ${format} the sheet keeps within the margins, with room to write and the cautions first`, async () => {
    const dots = 96 / 25.4;
    const width = Math.floor((widthMm - 24) * dots);
    const page = await (await browser.newContext({ viewport: { width, height: 1000 } })).newPage();
    await page.goto(address('coverage/bench-sheet/'));
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    for (const blank of await page.locator('.bench-block td.blank').all()) {
      const box = await blank.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(6.5 * dots);
      expect(box?.width).toBeGreaterThanOrEqual(18 * dots);
    }
    expect(await page.locator('.masthead').isVisible()).toBe(false);
    const cautions = await page.locator('.cautions').boundingBox();
    const table = await page.locator('.bench-block').first().boundingBox();
    expect(cautions?.y).toBeLessThan(table?.y ?? 0);
    expect(await textOf(page.locator('.cautions'))).toContain('No ground on these outputs');
    await page.context().close();
  });
}
