/** What no page may do: scroll sideways on a phone, complain in the console, or ask anyone else for anything. */
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launchBrowser } from './browser.ts';
import { mostPageBytes } from './page-budgets.ts';
import { onePageOfEachKind, pagesOfLanguage } from './pages.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test('no page scrolls sideways at 390 px, with everything unfolded', async () => {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
  const wide: string[] = [];
  // The second language has other words on the same pages: one of each kind.
  const paths = [...pagesOfLanguage(), ...onePageOfEachKind().map(({ path }) => `es/${path}`)];
  for (const path of paths) {
    await page.goto(`${inject('siteAddress')}${path}`);
    const width = await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
      return document.documentElement.scrollWidth;
    });
    if (width > 390) wide.push(`${path}: ${width}`);
  }
  expect(wide).toEqual([]);
  await page.context().close();
}, 120_000);

test('no console errors, no failed requests, nothing asked of third parties', async () => {
  const page = await (await browser.newContext()).newPage();
  const { origin } = new URL(inject('siteAddress'));
  const trouble: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') trouble.push(message.text());
  });
  page.on('pageerror', (error) => trouble.push(String(error)));
  page.on('requestfailed', (request) => trouble.push(`failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) trouble.push(`${response.status()}: ${response.url()}`);
  });
  page.on('request', (request) => requests.push(request.url()));
  for (const { path } of onePageOfEachKind()) {
    await page.goto(`${inject('siteAddress')}${path}`, { waitUntil: 'networkidle' });
  }
  await page.goto(inject('siteAddress'));
  await page.getByRole('combobox').fill('bass');
  await page.getByRole('combobox').fill('QQ99-77W');
  await page.waitForTimeout(1500);
  expect(trouble).toEqual([]);
  const foreign = requests.filter((url) => !url.startsWith(origin) && !url.startsWith('data:'));
  expect(foreign).toEqual([]);
  expect(requests.length).toBeGreaterThan(15);
  await page.context().close();
});

test('a small script on every page, and a file more where something is typed or walked through: less than 20 kB', async () => {
  const page = await (await browser.newContext()).newPage();
  const scripts = new Map<string, number>();
  page.on('response', async (response) => {
    if (response.request().resourceType() !== 'script') return;
    scripts.set(response.url(), gzipSync(await response.body()).length);
  });
  for (const { kind, path } of onePageOfEachKind()) {
    scripts.clear();
    await page.goto(`${inject('siteAddress')}${path}`, { waitUntil: 'networkidle' });
    // Within the page, so that a kept page and its script are of one version.
    const own = page.locator('script:not([src]):not([type$="json"])');
    expect(await own.count(), kind).toBe(1);
    expect((await own.textContent())?.length, kind).toBeLessThan(4000);
    const scripted = ['start', 'way in', 'which unit', 'table', 'planner', 'embed'].includes(kind);
    expect(await page.locator('script[src]').count(), kind).toBe(scripted ? 1 : 0);
    const bytes = [...scripts.values()].reduce((sum, one) => sum + one, 0);
    expect(bytes > 0, kind).toBe(scripted);
    expect(bytes, kind).toBeLessThan(20_000);
  }
  await page.context().close();
});

test('a profile’s page with its plots and all it loads is less than 60 kB, compressed', async () => {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const loaded: Promise<number>[] = [];
  page.on('response', (response) => {
    // Pictures are compressed already.
    const isText = !/\.(?:png|webp)$/.test(new URL(response.url()).pathname);
    loaded.push(response.body().then((body) => (isText ? gzipSync(body).length : body.length)));
  });
  await page.goto(`${inject('siteAddress')}profiles/brasslight/8b0s-i5z/`, { waitUntil: 'networkidle' });
  expect(await page.locator('main svg.plot').count()).toBeGreaterThan(1);
  const bytes = (await Promise.all(loaded)).reduce((sum, one) => sum + one, 0);
  expect(bytes).toBeGreaterThan(10_000);
  expect(bytes).toBeLessThan(mostPageBytes);
  await context.close();
});
