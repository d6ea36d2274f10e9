/** What is not measured yet, and the sheet for the bench, in a real browser and on paper. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { counted, follow, launchBrowser, printed, textOf, unfold } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** A page in a context of its own, without the worker: what it keeps is not what is looked at here. */
async function openPage(viewport = { width: 1280, height: 720 }): Promise<Page> {
  return (await browser.newContext({ viewport, serviceWorkers: 'block' })).newPage();
}

const address = (path: string): string => `${inject('siteAddress')}${path}`;

test('on a phone every row says its numbers in words, its bar being for eyes only', async () => {
  const page = await openPage({ width: 390, height: 844 });
  await page.goto(address('coverage/'));
  await unfold(page);
  const rows = await page.locator('.coverage tbody tr').evaluateAll((all) =>
    all.map((row) => ({
      text: row.textContent,
      counts: [...row.querySelectorAll('td.number')].map((cell) => cell.textContent),
      bars: [...row.querySelectorAll('.coverage-bar')].map((bar) => bar.getAttribute('aria-hidden')),
    })),
  );
  expect(rows.length).toBeGreaterThan(60);
  expect(rows.filter(({ bars }) => bars.length > 0).length).toBeGreaterThan(20);
  for (const { text, counts, bars } of rows) {
    const all = counts.reduce((sum, count) => sum + Number.parseInt(count, 10), 0);
    expect(all, text).toBeGreaterThan(0);
    for (const hidden of bars) expect(hidden, text).toBe('true');
  }
  // Patterns, not colours: one ink, and the same hatched.
  const fills = await page
    .locator('.coverage-bar rect')
    .evaluateAll((parts) => [...new Set(parts.map((part) => getComputedStyle(part).fill))].sort());
  expect(fills).toEqual(['rgb(21, 24, 27)', 'url("#coverage-hatch")']);
  await page.context().close();
});

test('what is wanted most leads to the value, to the answers that wait, and to the sheet', async () => {
  const page = await openPage();
  await page.goto(address('coverage/'));
  const first = page.locator('.wanted > li').first();
  expect(await textOf(first)).toMatch(/would settle\s+\d+\sanswers/);
  const waiting = await first.locator('.wanted-answers a').count();
  expect(await textOf(first.locator('.wanted-count'))).toContain(`settle ${waiting}\u00a0answers`);
  const value = first.locator('h3 a');
  const to = (await value.getAttribute('href')) ?? '';
  expect(to).toContain('#');
  await follow(value, to);
  await counted(page.locator(':target')).toBe(1);
  await page.goBack();
  await page.waitForURL(address('coverage/'));
  await follow(page.getByRole('link', { name: 'Sheet for the bench' }).first(), '/coverage/bench-sheet/');
  await page.context().close();
});

test('the printed rows are those of the file', async () => {
  const page = await openPage();
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
    const page = await openPage({ width, height: 1000 });
    await page.goto(address('coverage/bench-sheet/'));
    await printed(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const blanks = await page
      .locator('.bench-block td.blank')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON() as DOMRect));
    expect(blanks.length).toBeGreaterThan(50);
    expect(Math.min(...blanks.map(({ height: tall }) => tall))).toBeGreaterThanOrEqual(6.5 * dots);
    expect(Math.min(...blanks.map(({ width: across }) => across))).toBeGreaterThanOrEqual(18 * dots);
    expect(await page.locator('.masthead').isVisible()).toBe(false);
    const cautions = await page.locator('.cautions').boundingBox();
    const table = await page.locator('.bench-block').first().boundingBox();
    expect(cautions?.y).toBeLessThan(table?.y ?? 0);
    expect(await textOf(page.locator('.cautions'))).toContain('No ground on these outputs');
    await page.context().close();
  });
}
