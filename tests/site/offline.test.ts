/** In the garage: what was visited is there without a network, is never taken for new, and is renewed on request. */
import { cp, mkdtemp, rename, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { type Served, serveFolder } from '../../src/publish/serve.ts';
import { counted, follow, launchBrowser, nextFrames, says, textOf, visible } from './browser.ts';
import { basePath, editions } from './editions.ts';
import { slowProxy } from './slow-proxy.ts';

const { removed, edited, newWords } = editions;

let work: string;
let browser: Browser;
let served: Served | undefined;
let context: BrowserContext;
let page: Page;

const folder = () => join(work, 'published');

/** Puts an edition where the server finds it, in place of what was there: all of it at once, but for `left`. */
async function publish(edition: 'firstEdition' | 'secondEdition', left?: string): Promise<void> {
  const [next, last] = [join(work, 'next'), join(work, 'last')];
  await cp(inject(edition).folder, next, { recursive: true });
  if (left !== undefined) await rm(join(next, left));
  if (served !== undefined) await rename(folder(), last);
  await rename(next, folder());
  await rm(last, { recursive: true, force: true });
}

beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'readback-editions-'));
  const { headers, folders } = inject('firstEdition');
  await publish('firstEdition');
  served = await serveFolder({ folder: folder(), basePath, host: '127.0.0.1', port: 0, folders, headers });
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await rm(work, { recursive: true, force: true });
});
beforeEach(async () => {
  await publish('firstEdition');
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
});
afterEach(() => context.close());

const site = (): string => served?.address ?? '';
const open = (path: string) => page.goto(`${site()}${path}`);
/** Waits until a page has been told all that its worker knows at this moment, and has shown it. */
async function heard(on: Page): Promise<void> {
  await on.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    const { port1, port2 } = new MessageChannel();
    const told = new Promise((done) => {
      port1.onmessage = done;
    });
    active?.postMessage({ kind: 'version' }, [port2]);
    await told;
  });
  await nextFrames(on);
}
const field = () => page.getByRole('combobox', { name: 'Code on your screen' });
const banner = () => page.locator('.banner').getByRole('status');
const offer = () => page.getByRole('button', { name: 'Load it' });
const heading = () => says(page.getByRole('heading', { level: 1 }));
const foot = () => says(page.locator('.content-date'));
const main = () => says(page.locator('main'));
/** What is kept, as paths below the base path. */
const kept = () => expect.poll(() => keptPaths());
const keptPaths = (): Promise<string[]> =>
  page.evaluate(async (base) => {
    const stores = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const requests = await Promise.all(stores.map((store) => store.keys()));
    return requests.flat().map(({ url }) => url.slice(base.length).replace(/\?.*/, ''));
  }, site());

/** The start page and one unit's page, and then as long as it takes until the unit is kept. */
async function firstVisit(): Promise<void> {
  await open('');
  await open('units/brasslight/');
  // Written last, when the whole family is there.
  await kept().toContain('units/brasslight/offline.json');
}

test('after one visit the lookup, the unit and its profiles are there without a network', async () => {
  await firstVisit();
  await kept().toContain('codes.json');
  expect(await banner().count()).toBe(0);
  await context.setOffline(true);

  await open('');
  await says(banner()).toBe('No network: this is what was published on 1 March 2026.');
  await field().fill('G6OD-2ZS');
  await follow(page.getByRole('option', { name: 'G60D-2ZS' }), edited);
  await heading().toBe('G60D-2ZS');
  await says(page.locator('.sentence')).toMatch(/^Clean up to step \d+ of 30/);
  await says(banner()).toContain('published on 1 March 2026');

  const table = page.getByRole('link', { name: 'Can I put an amplifier behind this profile as it is?' });
  await follow(table, '/tables/amplifier-without-reflash/');
  await page.getByLabel('Which unit is it?').selectOption('Brasslight');
  await says(page.locator('#table-left')).toMatch(/^\d of 9\srules are left/);

  await open('units/brasslight/');
  expect(await page.locator('.steps > li').count()).toBeGreaterThan(2);
  await says(banner()).toContain('published on 1 March 2026');
  await visible(banner()).toBe(true);
});

test('a page that was never opened is said not to be kept, and leads to the lookup', async () => {
  await firstVisit();
  await context.setOffline(true);
  const response = await open('profiles/northpane/os518-b2-10/');
  expect(response?.status()).toBe(503);
  await heading().toBe('No network, and this page is not kept here');
  await heard(page);
  expect(await banner().count()).toBe(0);
  await follow(page.getByRole('main').getByRole('link', { name: 'Look up a code' }), site());
  await field().fill('OS518-B2-10');
  await counted(page.getByRole('option')).toBeGreaterThan(0);

  await open('profiles/northpane/os518-b2-10/');
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Load the page' }).click();
  await heading().toBe('OS518-B2.10');
});

test('a search for words says that it needs the network', async () => {
  await firstVisit();
  await context.setOffline(true);
  await open('');
  await field().fill('what does clipping sound like');
  await says(page.locator('#code-verdict')).toBe(
    'Searching for words needs the network, and it did not come through. Codes work without.',
  );
});

test('a newer version is offered, and comes only when it is asked for', async () => {
  await firstVisit();
  await context.setOffline(true);
  await open(edited);
  await says(banner()).toContain('1 March 2026');
  await page.evaluate(() => Object.assign(window, { isStillThis: true }));
  await publish('secondEdition');
  await context.setOffline(false);

  await says(banner()).toBe('This is what was published on 1 March 2026. A newer version is there:');
  expect((await offer().boundingBox())?.height).toBeGreaterThanOrEqual(48);
  await expect
    .poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state))
    .toBe('installed');
  await heard(page);
  expect(await page.evaluate(() => 'isStillThis' in window)).toBe(true);
  await main().not.toContain(newWords);

  let loads = 0;
  page.on('load', () => {
    loads += 1;
  });
  await offer().click();
  await main().toContain(newWords);
  await foot().toBe('Content of 2 April 2026');
  // The newer worker is at work, and the page has heard of it: there is nothing left to load it once more for.
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
  await expect
    .poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting))
    .toBe(null);
  await heard(page);
  await expect.poll(() => loads).toBe(1);
  expect(await banner().count()).toBe(0);

  // What lies below the unit has come along, and says its own date.
  await kept().not.toContain(removed);
  await context.setOffline(true);
  await open('');
  await says(banner()).toBe('No network: this is what was published on 2 April 2026.');
  await open(edited);
  await main().toContain(newWords);
});

test('a page that was taken away is dropped from what is kept', async () => {
  await firstVisit();
  await kept().toContain(removed);
  await publish('secondEdition');
  await open('units/brasslight/');
  await kept().not.toContain(removed);
  await context.setOffline(true);
  await open(removed);
  await heading().toBe('No network, and this page is not kept here');
});

test('another tab that shows the old version is told, not reloaded', async () => {
  await firstVisit();
  const other = await context.newPage();
  await other.goto(`${site()}${edited}`);
  await publish('secondEdition');
  // A page that is itself of the new version needs no offer: its worker takes over quietly.
  await open('units/brasslight/');
  await foot().toBe('Content of 2 April 2026');
  await says(other.locator('.banner').getByRole('status')).toBe('A newer version is there:');
  expect(await textOf(other.locator('.content-date'))).toBe('Content of 1 March 2026');
  await other.getByRole('button', { name: 'Load it' }).click();
  await says(other.locator('.content-date')).toBe('Content of 2 April 2026');
  await heard(page);
  expect(await banner().count()).toBe(0);
});

test('a new page never gets the old list of codes', async () => {
  await firstVisit();
  const address = () => page.locator('.lookup').getAttribute('data-codes');
  await open('');
  const old = await address();
  // Without its worker, so that the old one stays at work.
  await publish('secondEdition', 'service-worker.js');
  await open('');
  await foot().toBe('Content of 2 April 2026');
  expect(await address()).not.toBe(old);
  await context.setOffline(true);
  const answered = (list: string | null) =>
    page.evaluate(
      (url) =>
        fetch(url).then(
          ({ ok }) => ok,
          () => false,
        ),
      list ?? '',
    );
  expect(await answered(old)).toBe(true);
  expect(await answered(await address())).toBe(false);
});

test('a network that does not answer is not waited for', async () => {
  const proxy = await slowProxy(site());
  try {
    await page.goto(`${proxy.address}units/brasslight/`);
    await expect
      .poll(() => page.evaluate(async () => (await caches.match('offline.json')) !== undefined))
      .toBe(true);
    proxy.isStuck = true;
    const begin = Date.now();
    await page.goto(`${proxy.address}${edited}`);
    await heading().toBe('G60D-2ZS');
    expect(Date.now() - begin).toBeGreaterThan(2500);
    expect(Date.now() - begin).toBeLessThan(15_000);
    await says(banner()).toBe('The network does not answer: this is what was published on 1 March 2026.');
  } finally {
    await proxy.close();
  }
});

test('without a worker and without scripts there is no banner, and the date is in the foot', async () => {
  for (const options of [{ serviceWorkers: 'block' }, { javaScriptEnabled: false }] as const) {
    const plain = await browser.newContext(options);
    const one = await plain.newPage();
    const errors: string[] = [];
    one.on('pageerror', (error) => errors.push(String(error)));
    await one.goto(`${site()}${edited}`);
    if ('serviceWorkers' in options) await nextFrames(one);
    expect(await one.locator('.banner').count()).toBe(0);
    expect(await textOf(one.locator('.content-date'))).toBe('Content of 1 March 2026');
    expect(errors).toEqual([]);
    await plain.close();
  }
});

test('the site can be put on a home screen: manifest and icons', async () => {
  await open('');
  const address = await page.locator('link[rel=manifest]').getAttribute('href');
  const response = await fetch(new URL(address ?? '', site()));
  expect(response.headers.get('content-type')).toBe('application/manifest+json');
  const manifest = (await response.json()) as {
    name: string;
    short_name: string;
    start_url: string;
    scope: string;
    display: string;
    theme_color: string;
    icons: { src: string; type: string; sizes: string; purpose: string }[];
  };
  expect(manifest).toMatchObject({
    name: 'Quillhaven Audio Works',
    short_name: 'Quillhaven',
    start_url: basePath,
    scope: basePath,
    display: 'standalone',
    theme_color: '#8a3b12',
  });
  const shown = await Promise.all(
    manifest.icons.map(async ({ src, type, sizes, purpose }) => {
      const icon = await fetch(new URL(src, site()));
      expect(icon.headers.get('content-type'), src).toBe(type);
      const width = await page.evaluate(async (url) => {
        const image = new Image();
        image.src = url;
        await image.decode();
        return image.naturalWidth;
      }, src);
      if (sizes !== 'any') expect(`${width}x${width}`, src).toBe(sizes);
      return `${sizes} ${purpose}`;
    }),
  );
  expect(shown.sort()).toEqual([
    '192x192 any',
    '192x192 maskable',
    '512x512 any',
    '512x512 maskable',
    'any any',
  ]);
  // What the browser itself finds missing for an installation, save what a headless one never has.
  const session = await context.newCDPSession(page);
  const { errors } = await session.send('Page.getAppManifest');
  expect(errors).toEqual([]);
});
