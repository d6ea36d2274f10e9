/** Every page is to be read without scripts; the code field then leads to the list of all codes. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { follow, launchBrowser, textOf } from './browser.ts';
import { onePageOfEachKind } from './pages.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  const context = await browser.newContext({
    javaScriptEnabled: false,
    viewport: { width: 390, height: 844 },
  });
  page = await context.newPage();
});
afterAll(() => browser.close());

test('from the code field to a profile’s answer', async () => {
  await page.goto(inject('siteAddress'));
  await page.getByLabel('Code on your screen').fill('G60D-2ZS');
  await follow(page.getByRole('button', { name: 'Look up' }), /\/help\/codes\/(?:\?|$)/);
  await follow(page.getByRole('link', { name: 'G60D-2ZS' }), '/profiles/brasslight/g60d-2zs/');
  expect(await textOf(page.getByRole('heading', { level: 1 }))).toBe('G60D-2ZS');
  expect(await textOf(page.locator('.sentence'))).toMatch(/^Clean up to step \d+ of 30: [\d.]+\sV/);
  expect(await page.locator('svg.plot path.curve').count()).toBeGreaterThan(1);
});

test('from a unit’s page to the number of its last step', async () => {
  await page.goto(`${inject('siteAddress')}units/brasslight/`);
  const steps = page.locator('.steps > li');
  expect(await steps.count()).toBeGreaterThan(2);
  expect(await textOf(steps.last())).toContain('Here is the active code');
  expect(await textOf(page.locator('.trap').first())).toContain('This list is not your answer');
});

test('each kind of page has its heading and its text', async () => {
  for (const { kind, path } of onePageOfEachKind()) {
    await page.goto(`${inject('siteAddress')}${path}`);
    expect(await page.getByRole('heading', { level: 1 }).count(), kind).toBe(1);
    expect((await textOf(page.locator('main'))).length, kind).toBeGreaterThan(80);
  }
});
