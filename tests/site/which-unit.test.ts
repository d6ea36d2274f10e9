/** Finding out which unit it is, in a real browser: by model line and year, by a question, by sight. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { launchBrowser, textOf } from './browser.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  await page?.context().close();
  page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
});

const open = (query = '') => page.goto(`${inject('siteAddress')}which-unit/${query}`);
const shown = () => page.locator('.sight:visible h3').allTextContents();

test('model line and year decide, and lead to the way to the code', async () => {
  await open();
  expect((await shown()).length).toBe(5);
  await page.getByLabel('Model line', { exact: true }).selectOption('Ordwick');
  await page.getByLabel('Model year', { exact: true }).selectOption('2010');
  expect(await textOf(page.getByRole('status'))).toBe(
    'Ordwick of 2010 left the factory with Brasslight. It is Brasslight if the face below is the one you see.',
  );
  expect(await shown()).toEqual(['Brasslight']);
  expect(new URL(page.url()).search).toBe('?model=Ordwick&year=2010');
  await page.getByRole('link', { name: 'Read its code' }).click();
  expect(new URL(page.url()).pathname).toContain('/units/brasslight/');
});

test('the form comes where its room was: nothing below it moves', async () => {
  await page.addInitScript(() => {
    let shift = 0;
    // Of the draft Layout Instability API.
    type Shift = PerformanceEntry & { readonly value: number };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) shift += (entry as Shift).value;
      document.documentElement.dataset.shift = String(shift);
    }).observe({ type: 'layout-shift', buffered: true });
    document.addEventListener('DOMContentLoaded', () => {
      document.documentElement.dataset.shift = String(shift);
    });
  });
  await open();
  await page.locator('.which-choices button').first().waitFor();
  await page.waitForTimeout(300);
  expect(await page.locator('html').getAttribute('data-shift')).toBe('0');
});

test('an undecided case asks one question; its answer decides; a reload keeps what is ridden', async () => {
  await open('?model=Tarrowby');
  expect(await shown()).toEqual(['Dialstone', 'Glasswick', 'Lanternby']);
  const question = page.getByRole('group', { name: 'How many knobs that turn are on the face?' });
  await question.getByRole('button', { name: 'Two' }).click();
  expect(await shown()).toEqual(['Dialstone']);
  expect(await question.isVisible()).toBe(false);
  await page.getByRole('button', { name: 'Begin again' }).click();
  expect((await shown()).length).toBe(5);
  expect(new URL(page.url()).search).toBe('');
});

test('by keys alone, and a rider who cannot tell is asked something else', async () => {
  await open('?model=Tarrowby');
  await page.getByRole('button', { name: 'None' }).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await textOf(page.locator('#which-question legend'))).not.toContain('How many knobs');
  expect(await page.locator('.which-choices button:focus').count()).toBe(1);
});

test('a year no unit is known for is told, and the faces stay', async () => {
  await open('?model=Ordwick&year=2010');
  await page.evaluate(() => {
    const year = document.querySelector<HTMLSelectElement>('#which-year');
    year?.append(new Option('1990', '1990'));
  });
  await page.getByLabel('Model year', { exact: true }).selectOption('1990');
  expect(await textOf(page.getByRole('status'))).toContain(
    'No unit is known for Ordwick of 1990; known are 2006 to 2026. Go by what you see.',
  );
  expect((await shown()).length).toBe(5);
});

test('an address that names no model line known here asks as if nothing was said', async () => {
  await open('?model=%3Cb%3E&year=abc');
  expect(await page.getByLabel('Model line', { exact: true }).inputValue()).toBe('');
  expect((await shown()).length).toBe(5);
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
