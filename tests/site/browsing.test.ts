/** What no page may do: scroll sideways on a phone, complain in the console, or ask anyone else for anything. */
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { counted, inTabs, launchBrowser, says, unfold } from './browser.ts';
import { mostPageBytes } from './page-budgets.ts';
import { onePageOfEachKind, pagesOfLanguage } from './pages.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Notes, from now on, what a page complains of and what it asks for. */
function watched(page: Page): { readonly trouble: string[]; readonly requests: string[] } {
  const [trouble, requests]: [string[], string[]] = [[], []];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') trouble.push(message.text());
  });
  page.on('pageerror', (error) => trouble.push(String(error)));
  page.on('requestfailed', (request) => trouble.push(`failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) trouble.push(`${response.status()}: ${response.url()}`);
  });
  page.on('request', (request) => requests.push(request.url()));
  return { trouble, requests };
}

test('no page scrolls sideways at 390 px, with everything unfolded', async () => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const wide: string[] = [];
  // The second language has other words on the same pages: one of each kind.
  const paths = [...pagesOfLanguage(), ...onePageOfEachKind().map(({ path }) => `es/${path}`)];
  for (const path of paths) {
    await page.goto(`${inject('siteAddress')}${path}`);
    await unfold(page);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    if (width > 390) wide.push(`${path}: ${width}`);
  }
  expect(wide).toEqual([]);
  await context.close();
}, 120_000);

describe('one page of each kind', () => {
  interface Visit {
    readonly kind: string;
    readonly trouble: readonly string[];
    readonly requests: readonly string[];
    /** Bytes of the scripts that were loaded, compressed. */
    readonly scriptBytes: number;
    readonly ownScripts: readonly string[];
    readonly namedScripts: number;
  }
  let visits: Visit[];

  beforeAll(async () => {
    const context = await browser.newContext();
    visits = await inTabs(context, onePageOfEachKind(), async (page, { kind, path }) => {
      const { trouble, requests } = watched(page);
      const scripts: Promise<number>[] = [];
      page.on('response', (response) => {
        if (response.request().resourceType() !== 'script') return;
        scripts.push(response.body().then((body) => gzipSync(body).length));
      });
      await page.goto(`${inject('siteAddress')}${path}`, { waitUntil: 'networkidle' });
      const scriptBytes = (await Promise.all(scripts)).reduce((sum, one) => sum + one, 0);
      // Within the page, so that a kept page and its script are of one version.
      const ownScripts = await page.locator('script:not([src]):not([type$="json"])').allTextContents();
      const namedScripts = await page.locator('script[src]').count();
      return { kind, trouble, requests, scriptBytes, ownScripts, namedScripts };
    });
    await context.close();
  });

  test('no console errors, no failed requests, nothing asked of third parties', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const search = watched(page);
    await page.goto(inject('siteAddress'));
    const field = page.getByRole('combobox', { name: 'Code on your screen' });
    await field.fill('bass');
    await counted(page.locator('#page-results li')).toBeGreaterThan(0);
    await field.fill('QQ99-77W');
    await says(page.getByRole('status')).toMatch(/^No profile known here has this code/);
    // Then the pages are searched for it: none speaks of it.
    await counted(page.locator('#page-results li')).toBe(0);
    await context.close();

    expect([...visits, search].flatMap(({ trouble }) => trouble)).toEqual([]);
    const requests = [...visits, search].flatMap((one) => one.requests);
    const { origin } = new URL(inject('siteAddress'));
    expect(requests.filter((url) => !url.startsWith(origin) && !url.startsWith('data:'))).toEqual([]);
    expect(requests.length).toBeGreaterThan(15);
  });

  test('a small script on every page, and a file more where something is typed or walked through: less than 20 kB', () => {
    expect(visits.length).toBeGreaterThan(20);
    for (const { kind, scriptBytes, ownScripts, namedScripts } of visits) {
      expect(ownScripts.length, kind).toBe(1);
      expect(ownScripts[0]?.length, kind).toBeLessThan(4000);
      const scripted = ['start', 'way in', 'which unit', 'table', 'planner', 'embed'].includes(kind);
      expect(namedScripts, kind).toBe(scripted ? 1 : 0);
      expect(scriptBytes > 0, kind).toBe(scripted);
      expect(scriptBytes, kind).toBeLessThan(20_000);
    }
  });
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
