/**
 * Writing entries with the site open: an edit reloads the page, a mistake keeps the last good one. One development site
 * runs in a checkout at a time: all that is asked of it is asked here.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser, nextFrames } from './browser.ts';
import type { DevMessage } from './dev-process.ts';
import { freePort } from './nginx.ts';

let browser: Browser;
let page: Page;
let site: ChildProcess;
let contentFolder: string;
let address: string;
const news: Extract<DevMessage, { kind: 'news' }>[] = [];

const entry = () => join(contentFolder, 'profiles/brasslight/g60d-2zs.yaml');
const about = (words: string): void => {
  const text = readFileSync(entry(), 'utf8');
  writeFileSync(entry(), text.replace(/^about: .*(?:\n {2}.*)*/m, `about: ${words}`));
};
const shows = (words: string) =>
  expect.poll(() => page.evaluate(() => document.querySelector('main')?.textContent ?? '')).toContain(words);
/** What was told last. A file may be seen half written: then more is told at once. */
const lastNews = () => expect.poll(() => news.at(-1));

function startSite(port: number): Promise<string> {
  const { VITEST: _, NODE_ENV: __, ...env } = process.env;
  const file = fileURLToPath(new URL('./dev-process.ts', import.meta.url));
  site = fork(file, [contentFolder, String(port)], { env });
  return new Promise((ready, failed) => {
    site.on('message', (message: DevMessage) => {
      if (message.kind === 'news') news.push(message);
      else ready(message.address);
    });
    site.on('exit', (code) => failed(new Error(`The development site ended with ${code}.`)));
  });
}

beforeAll(async () => {
  contentFolder = mkdtempSync(join(tmpdir(), 'readback-dev-'));
  cpSync(fileURLToPath(new URL('../../content/', import.meta.url)), contentFolder, { recursive: true });
  browser = await launchBrowser();
  page = await browser.newPage();
  const port = await freePort();
  await leaveWorkerBehind(port);
  address = await startSite(port);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  site?.kill();
  rmSync(contentFolder, { recursive: true, force: true });
});

/** The worst worker there could be: it never asks the network. */
const stubborn = `self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => { if (event.request.mode === 'navigate') event.respondWith(
  new Response('<h1>Stale page</h1>', { headers: { 'content-type': 'text/html' } })); });`;

/** As from a published site at the same address. */
async function leaveWorkerBehind(port: number): Promise<void> {
  const published = createServer((request, response) => {
    const isWorker = request.url === '/service-worker.js';
    response.writeHead(200, { 'content-type': isWorker ? 'text/javascript' : 'text/html' });
    response.end(isWorker ? stubborn : '<h1>Published page</h1>');
  });
  await new Promise<void>((ready) => published.listen(port, '127.0.0.1', ready));
  await page.goto(`http://127.0.0.1:${port}/`);
  await page.evaluate(async () => {
    await navigator.serviceWorker.register('/service-worker.js');
    await navigator.serviceWorker.ready;
  });
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  await new Promise<void>((closed) => {
    published.close(() => closed());
    published.closeAllConnections();
  });
}

test('a worker left over from a published site at the same address goes, and none is registered', async () => {
  const heading = () => expect.poll(() => page.evaluate(() => document.querySelector('h1')?.textContent));
  const workers = () =>
    expect.poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length));
  const stale = await page.reload();
  expect(stale?.fromServiceWorker()).toBe(true);
  await heading().toBe('Code on your screen');
  await workers().toBe(0);
  // The site may be reloading the page at this moment, which takes the place of our reload.
  await expect.poll(async () => (await page.reload())?.fromServiceWorker()).toBe(false);
  await nextFrames(page);
  await heading().toBe('Code on your screen');
  await workers().toBe(0);
  expect(await page.locator('.content-date, .banner').count()).toBe(0);
});

test('an edited entry reloads the page', async () => {
  await page.goto(`${address}profiles/brasslight/g60d-2zs/`);
  await shows('A dealer update');
  about('Words that were not there before.');
  await shows('Words that were not there before.');
});

test('the code field for other sites is there, and its data may be read from any origin', async () => {
  const script = await fetch(new URL('/embed/code-field.js', page.url()));
  expect(script.headers.get('content-type')).toBe('text/javascript');
  expect(await script.text()).toContain('readback-code-field');
  const codes = await fetch(new URL('/codes.json', page.url()));
  expect(codes.headers.get('access-control-allow-origin')).toBe('*');
  expect(await codes.text()).toContain('G60D-2ZS');
});

test('what other programs read is made of the entries as they are', async () => {
  const read = (path: string) => fetch(new URL(path, new URL('/', page.url())));
  const document = await read('api/v1/profiles/brasslight/g60d-2zs.json');
  expect(document.headers.get('content-type')).toBe('application/json');
  expect(await document.json()).toMatchObject({ about: 'Words that were not there before.' });
  const table = await read('data/profiles.csv');
  expect(table.headers.get('content-type')).toContain('text/csv');
  expect(await table.text()).toContain('brasslight/g60d-2zs,brasslight,');
  expect(await (await read('changes.atom')).text()).toContain('<feed xmlns="http://www.w3.org/2005/Atom"');
  expect((await read('api/v1/profiles/brasslight/none.json')).status).toBe(404);
});

test('a broken entry is reported, and the last good page stays', async () => {
  const good = readFileSync(entry(), 'utf8');
  writeFileSync(entry(), 'code: 8\n');
  await lastNews().toMatchObject({
    shown: false,
    files: expect.arrayContaining(['profiles/brasslight/g60d-2zs.yaml']),
  });
  // The site may be reloading the page at this moment, which takes the place of our reload.
  await expect.poll(() => page.reload().then(() => 'reloaded', String)).toBe('reloaded');
  await shows('Words that were not there before.');

  writeFileSync(entry(), good);
  about('Put right again.');
  await shows('Put right again.');
  await lastNews().toMatchObject({ shown: true, files: [] });
});

test('a contradiction between readings is reported, and the pages go on', async () => {
  const sheet = join(contentFolder, 'outputs/2024-02-north/readings.csv');
  const good = readFileSync(sheet, 'utf8');
  writeFileSync(sheet, good.replace(',16,1000,1.6400,', ',16,1000,1.4600,'));
  await lastNews().toMatchObject({ shown: true, files: ['outputs/2024-02-north/readings.csv'] });
  writeFileSync(sheet, good);
  await lastNews().toMatchObject({ shown: true, files: [] });
});
