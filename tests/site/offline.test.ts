/** In the garage: what was visited is there without a network, is never taken for new, and is renewed on request. */
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { type Served, serveFolder } from '../../src/publish/serve.ts';
import { ContentCopy } from '../content-copy.ts';
import { launchBrowser, textOf } from './browser.ts';
import { basePath } from './built-site.ts';
import { slowProxy } from './slow-proxy.ts';

const removed = 'profiles/brasslight/i1l0-s5g/';
const edited = 'profiles/brasslight/g60d-2zs/';
const newWords = 'Words of the second edition.';

let work: string;
let browser: Browser;
let served: Served;
let context: BrowserContext;
let page: Page;

const folder = () => join(work, 'published');

/** Puts an edition where the server finds it, in place of what was there. */
async function publish(edition: 'first' | 'second'): Promise<void> {
  await rm(folder(), { recursive: true, force: true });
  await cp(join(work, edition), folder(), { recursive: true });
}

beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'readback-editions-'));
  const content = await ContentCopy.inEnglish();
  const build = async (edition: string, date: string) => {
    const { answers } = await readAnswers(content.folder);
    return buildSite({ answers, outDir: join(work, edition), basePath, date, log: () => {} });
  };
  const { headers, folders } = await build('first', '2026-03-01');
  await content.edit(
    'profiles/brasslight/g60d-2zs.yaml',
    'A dealer update against dull sound',
    `${newWords} A dealer update against dull sound`,
  );
  await rm(join(content.folder, 'profiles/brasslight/i1l0-s5g.yaml'));
  await build('second', '2026-04-02');
  await content.remove();
  await publish('first');
  served = await serveFolder({ folder: folder(), basePath, host: '127.0.0.1', port: 0, folders, headers });
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await rm(work, { recursive: true, force: true });
});
beforeEach(async () => {
  await publish('first');
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
});
afterEach(() => context.close());

const open = (path: string) => page.goto(`${served.address}${path}`);
const banner = () => page.locator('.banner').getByRole('status');
const offer = () => page.getByRole('button', { name: 'Load it' });
const heading = () => textOf(page.getByRole('heading', { level: 1 }));
const foot = () => textOf(page.locator('.content-date'));
/** Polls as long as a reload or a new worker may take on a busy machine. */
const soon = <Value>(read: () => Promise<Value>) => expect.poll(read, { timeout: 20_000 });
/** What is kept, as paths below the base path. */
const kept = (): Promise<string[]> =>
  page.evaluate(async (base) => {
    const stores = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const requests = await Promise.all(stores.map((store) => store.keys()));
    return requests.flat().map(({ url }) => url.slice(base.length).replace(/\?.*/, ''));
  }, served.address);

/** The start page and one unit's page, and then as long as it takes until the unit is kept. */
async function firstVisit(): Promise<void> {
  await open('');
  await open('units/brasslight/');
  // Written last, when the whole family is there.
  await soon(kept).toContain('units/brasslight/offline.json');
}

test('after one visit the lookup, the unit and its profiles are there without a network', async () => {
  await firstVisit();
  expect(await kept()).toContain('codes.json');
  expect(await banner().count()).toBe(0);
  await context.setOffline(true);

  await open('');
  expect(await textOf(banner())).toBe('No network: this is what was published on 1 March 2026.');
  await page.getByRole('combobox').fill('G6OD-2ZS');
  await page.getByRole('option', { name: 'G60D-2ZS' }).click();
  await page.waitForURL(`**/${edited}`);
  expect(await heading()).toBe('G60D-2ZS');
  expect(await textOf(page.locator('.sentence'))).toMatch(/^Clean up to step \d+ of 30/);
  await soon(() => textOf(banner())).toContain('published on 1 March 2026');

  await page.getByRole('link', { name: 'Can I put an amplifier behind this profile as it is?' }).click();
  await page.getByLabel('Which unit is it?').selectOption('Brasslight');
  expect(await textOf(page.locator('#table-left'))).toMatch(/^\d of 9\srules are left/);

  await open('units/brasslight/');
  expect(await page.locator('.steps > li').count()).toBeGreaterThan(2);
  await soon(() => textOf(banner())).toContain('published on 1 March 2026');
  expect(await banner().isVisible()).toBe(true);
});

test('a page that was never opened is said not to be kept, and leads to the lookup', async () => {
  await firstVisit();
  await context.setOffline(true);
  const response = await open('profiles/northpane/os518-b2-10/');
  expect(response?.status()).toBe(503);
  expect(await heading()).toBe('No network, and this page is not kept here');
  await page.waitForTimeout(500);
  expect(await banner().count()).toBe(0);
  await page.getByRole('main').getByRole('link', { name: 'Look up a code' }).click();
  await page.waitForURL(served.address);
  await page.getByRole('combobox').fill('OS518-B2-10');
  await soon(() => page.getByRole('option').count()).toBeGreaterThan(0);

  await open('profiles/northpane/os518-b2-10/');
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Load the page' }).click();
  await soon(heading).toBe('OS518-B2.10');
});

test('a search for words says that it needs the network', async () => {
  await firstVisit();
  await context.setOffline(true);
  await open('');
  await page.getByRole('combobox').fill('what does clipping sound like');
  await soon(() => textOf(page.locator('#code-verdict'))).toBe(
    'Searching for words needs the network, and it did not come through. Codes work without.',
  );
});

test('a newer version is offered, and comes only when it is asked for', async () => {
  await firstVisit();
  await context.setOffline(true);
  await open(edited);
  await soon(() => textOf(banner())).toContain('1 March 2026');
  await page.evaluate(() => Object.assign(window, { isStillThis: true }));
  await publish('second');
  await context.setOffline(false);

  await soon(() => textOf(banner())).toBe(
    'This is what was published on 1 March 2026. A newer version is there:',
  );
  expect((await offer().boundingBox())?.height).toBeGreaterThanOrEqual(48);
  await page.waitForTimeout(500);
  expect(await page.evaluate(() => 'isStillThis' in window)).toBe(true);
  expect(await textOf(page.locator('main'))).not.toContain(newWords);

  let loads = 0;
  page.on('load', () => {
    loads += 1;
  });
  await offer().click();
  await soon(() => textOf(page.locator('main')).catch(() => '')).toContain(newWords);
  expect(await foot()).toBe('Content of 2 April 2026');
  await page.waitForTimeout(1500);
  expect(loads).toBe(1);
  expect(await banner().count()).toBe(0);

  // What lies below the unit has come along, and says its own date.
  await soon(kept).not.toContain(removed);
  await context.setOffline(true);
  await open('');
  expect(await textOf(banner())).toBe('No network: this is what was published on 2 April 2026.');
  await open(edited);
  expect(await textOf(page.locator('main'))).toContain(newWords);
});

test('a page that was taken away is dropped from what is kept', async () => {
  await firstVisit();
  expect(await kept()).toContain(removed);
  await publish('second');
  await open('units/brasslight/');
  await soon(kept).not.toContain(removed);
  await context.setOffline(true);
  await open(removed);
  expect(await heading()).toBe('No network, and this page is not kept here');
});

test('another tab that shows the old version is told, not reloaded', async () => {
  await firstVisit();
  const other = await context.newPage();
  await other.goto(`${served.address}${edited}`);
  await publish('second');
  // A page that is itself of the new version needs no offer: its worker takes over quietly.
  await open('units/brasslight/');
  expect(await foot()).toBe('Content of 2 April 2026');
  await soon(() => textOf(other.locator('.banner').getByRole('status'))).toBe('A newer version is there:');
  expect(await textOf(other.locator('.content-date'))).toBe('Content of 1 March 2026');
  expect(await banner().count()).toBe(0);
  await other.getByRole('button', { name: 'Load it' }).click();
  await soon(() => textOf(other.locator('.content-date')).catch(() => '')).toBe('Content of 2 April 2026');
});

test('a new page never gets the old list of codes', async () => {
  await firstVisit();
  const address = () => page.locator('.lookup').getAttribute('data-codes');
  await open('');
  const old = await address();
  await publish('second');
  // Without its worker, so that the old one stays at work.
  await rm(join(folder(), 'service-worker.js'));
  await open('');
  expect(await foot()).toBe('Content of 2 April 2026');
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
  const proxy = await slowProxy(served.address);
  try {
    await page.goto(`${proxy.address}units/brasslight/`);
    await soon(() => page.evaluate(async () => (await caches.match('offline.json')) !== undefined)).toBe(
      true,
    );
    proxy.isStuck = true;
    const begin = Date.now();
    await page.goto(`${proxy.address}${edited}`);
    expect(await heading()).toBe('G60D-2ZS');
    expect(Date.now() - begin).toBeGreaterThan(2500);
    expect(Date.now() - begin).toBeLessThan(10_000);
    expect(await textOf(banner())).toBe(
      'The network does not answer: this is what was published on 1 March 2026.',
    );
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
    await one.goto(`${served.address}${edited}`);
    await one.waitForTimeout(300);
    expect(await one.locator('.banner').count()).toBe(0);
    expect(await textOf(one.locator('.content-date'))).toBe('Content of 1 March 2026');
    expect(errors).toEqual([]);
    await plain.close();
  }
});

test('the site can be put on a home screen: manifest and icons', async () => {
  await open('');
  const address = await page.locator('link[rel=manifest]').getAttribute('href');
  const response = await fetch(new URL(address ?? '', served.address));
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
      const icon = await fetch(new URL(src, served.address));
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
