/** Finding out which unit it is, in a real browser: by model line and year, by a question, by sight. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { addressOf, counted, follow, launchBrowser, nextFrames, says, visible } from './browser.ts';

let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  // Nothing is kept from page to page: the address has it all.
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
});
afterAll(() => browser.close());
beforeEach(async () => {
  page = await context.newPage();
});
afterEach(() => page.close());

const open = (query = '') => page.goto(`${inject('siteAddress')}which-unit/${query}`);
const shown = () => expect.poll(() => page.locator('.sight:visible h3').allTextContents());

test('model line and year decide, and lead to the way to the code', async () => {
  await open();
  await shown().toHaveLength(5);
  await page.getByLabel('Model line', { exact: true }).selectOption('Ordwick');
  await page.getByLabel('Model year', { exact: true }).selectOption('2010');
  await says(page.getByRole('status')).toBe(
    'Ordwick of 2010 left the factory with Brasslight. It is Brasslight if the face below is the one you see.',
  );
  await shown().toEqual(['Brasslight']);
  await addressOf(page, 'search').toBe('?model=Ordwick&year=2010');
  await follow(page.getByRole('link', { name: 'Read its code' }), '/units/brasslight/#read');
});

test('the form comes where its room was: nothing below it moves', async () => {
  await page.addInitScript(() => {
    const moved: number[] = [];
    Object.assign(window, { moved });
    new PerformanceObserver((list) => {
      for (const { startTime } of list.getEntries()) moved.push(startTime);
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await open();
  await page.locator('.which-choices button').first().waitFor();
  await nextFrames(page);
  // Something that does move is told after all that moved before it.
  const now = await page.evaluate(() => {
    const at = performance.now();
    const above = document.createElement('p');
    above.style.height = '200px';
    document.querySelector('main')?.prepend(above);
    return at;
  });
  const moved = () => page.evaluate(() => (window as unknown as { moved: number[] }).moved);
  await expect.poll(async () => (await moved()).filter((at) => at >= now).length).toBeGreaterThan(0);
  expect((await moved()).filter((at) => at < now)).toEqual([]);
});

test('an undecided case asks one question; its answer decides; a reload keeps what is ridden', async () => {
  await open('?model=Tarrowby');
  await shown().toEqual(['Dialstone', 'Glasswick', 'Lanternby']);
  const question = page.getByRole('group', { name: 'How many knobs that turn are on the face?' });
  await question.getByRole('button', { name: 'Two' }).click();
  await shown().toEqual(['Dialstone']);
  await visible(question).toBe(false);
  await page.getByRole('button', { name: 'Begin again' }).click();
  await shown().toHaveLength(5);
  await addressOf(page, 'search').toBe('');
});

test('by keys alone, and a rider who cannot tell is asked something else', async () => {
  await open('?model=Tarrowby');
  await page.getByRole('button', { name: 'None' }).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await says(page.locator('#which-question legend')).not.toContain('How many knobs');
  await counted(page.locator('.which-choices button:focus')).toBe(1);
});

test('a year no unit is known for is told, and the faces stay', async () => {
  await open('?model=Ordwick&year=2010');
  await page.evaluate(() => {
    const year = document.querySelector<HTMLSelectElement>('#which-year');
    year?.append(new Option('1990', '1990'));
  });
  await page.getByLabel('Model year', { exact: true }).selectOption('1990');
  await says(page.getByRole('status')).toContain(
    'No unit is known for Ordwick of 1990; known are 2006 to 2026. Go by what you see.',
  );
  await shown().toHaveLength(5);
});

test('an address that names no model line known here asks as if nothing was said', async () => {
  await open('?model=%3Cb%3E&year=abc');
  await expect.poll(() => page.getByLabel('Model line', { exact: true }).inputValue()).toBe('');
  await shown().toHaveLength(5);
});

test('without scripts all faces and the table stand there', async () => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const plain = await context.newPage();
  await plain.goto(`${inject('siteAddress')}which-unit/`);
  expect(await plain.locator('.sight svg.face').count()).toBe(5);
  expect(await plain.locator('table.fitment tbody tr').count()).toBeGreaterThan(9);
  expect(await plain.locator('#which').isVisible()).toBe(false);
  await context.close();
});
