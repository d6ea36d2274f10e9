/** The code field beyond single codes: words narrowed down, codes kept on the device, one unit only, pasted text. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { addressOf, counted, follow, launchBrowser, nextFrames, says, textOf, visible } from './browser.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  await page?.context().close();
  // A store of its own each time, for what is kept on the device.
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  page = await context.newPage();
  await page.goto(inject('siteAddress'));
});

const field = () => page.getByRole('combobox', { name: 'Code on your screen' });
const options = () => page.locator('#code-results').getByRole('option');
/** What is kept is shown at `pageshow`, which comes right after `load`. */
const pageIsShown = () => nextFrames(page);
const pageTitles = () => page.locator('#page-results .row-title').allTextContents();

test('words are narrowed down by unit, kind and trait, without the rider choosing what he types', async () => {
  await field().fill('weak bass');
  await expect.poll(async () => (await pageTitles()).length).toBeGreaterThan(2);
  // Each choice is taken from those that are left after the one before.
  for (const [label, value] of [
    ['Kind', 'Profile'],
    ['Trait', 'Rear silent'],
    ['Unit', 'Glasswick'],
  ] as const) {
    const choice = page.getByLabel(label, { exact: true });
    const offered = () => choice.locator('option').allTextContents();
    await expect.poll(offered).toContain(value);
    await choice.selectOption(value);
  }
  const addresses = () =>
    page
      .locator('#page-results a')
      .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
  await expect
    .poll(async () => [...new Set((await addresses()).map((one) => one.replace(/[^/]+\/$/, '')))])
    .toEqual(['/help/profiles/glasswick/']);
  const found = await addresses();
  expect(found.length).toBeGreaterThan(0);
  const other = await page.context().newPage();
  for (const address of found) {
    await other.goto(new URL(address, page.url()).href);
    expect(await textOf(other.locator('.sentence'))).toMatch(/rear channels silent/);
  }
  await other.close();
  await field().fill('G60D-2ZS');
  await counted(options()).toBe(1);
  await visible(page.locator('.filters')).toBe(false);
});

test('a code that was opened stands beneath the empty field, until it is forgotten', async () => {
  await field().fill('G60D-2ZS');
  await follow(options().first(), '/profiles/brasslight/g60d-2zs/');
  await page.goto(inject('siteAddress'));
  const recent = page.getByRole('region', { name: 'Looked up on this device' });
  await expect.poll(() => recent.getByRole('link').allTextContents()).toEqual(['G60D-2ZSBrasslight']);
  await field().fill('x');
  await visible(recent).toBe(false);
  await field().fill('');
  await visible(recent).toBe(true);
  await recent.getByRole('button', { name: 'Forget them' }).click();
  await visible(recent).toBe(false);
  await page.reload();
  await pageIsShown();
  expect(await recent.isVisible()).toBe(false);
});

test('what something else left in the store of the browser is no code, and leads nowhere', async () => {
  await page.evaluate(() =>
    window.localStorage.setItem(
      'readback-recent-codes',
      JSON.stringify([{ code: 'X', family: 'Y', path: 'https://elsewhere.example/' }, 7]),
    ),
  );
  await page.reload();
  await pageIsShown();
  expect(await page.locator('#recent-codes').isVisible()).toBe(false);
  await page.evaluate(() => window.localStorage.setItem('readback-recent-codes', '{'));
  await page.reload();
  await field().fill('G60D-2ZS');
  await counted(options()).toBe(1);
});

test('from a unit’s page only its codes are searched; a code of another is told as such, and shown', async () => {
  await page.goto(`${inject('siteAddress')}units/glasswick/`);
  await follow(page.getByRole('link', { name: 'Look up the code you read' }), '/help/?unit=glasswick');
  await says(page.locator('#code-unit')).toContain('Codes of Glasswick only.');
  await field().fill('G60D-2ZS');
  await says(page.locator('#code-verdict')).toBe(
    'This unit has no such code, but another one has: check which unit it is.',
  );
  await says(options().first()).toContain('Brasslight');
  await page.getByRole('button', { name: 'Search all units' }).click();
  await says(page.locator('#code-verdict')).toBe('This is G60D-2ZS.');
  await addressOf(page, 'search').toBe('?code=G60D-2ZS');
});

test('a code in the middle of a pasted message is found', async () => {
  await field().fill('hello, the screen says G60D-2ZS, is that good?');
  await says(page.locator('#code-verdict')).toBe('This is G60D-2ZS.');
});

test('the address brings the code back', async () => {
  await page.goto(`${inject('siteAddress')}?code=g60d2zs`);
  await says(page.locator('#code-verdict')).toBe('This is G60D-2ZS.');
});
