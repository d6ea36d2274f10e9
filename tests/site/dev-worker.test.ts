/** A worker left over from a published site at the same address does not answer for the development site. */
import { type ChildProcess, fork } from 'node:child_process';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from './browser.ts';
import type { DevMessage } from './dev-process.ts';

let browser: Browser;
let site: ChildProcess | undefined;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  site?.kill();
});

/** The worst worker there could be: it never asks the network. */
const stubborn = `self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => { if (event.request.mode === 'navigate') event.respondWith(
  new Response('<h1>Stale page</h1>', { headers: { 'content-type': 'text/html' } })); });`;

function devSiteAt(port: number): Promise<void> {
  const { VITEST: _, NODE_ENV: __, ...env } = process.env;
  const started = fork(
    fileURLToPath(new URL('./dev-process.ts', import.meta.url)),
    [fileURLToPath(new URL('../../content/', import.meta.url)), String(port)],
    { env },
  );
  site = started;
  return new Promise((ready, failed) => {
    started.on('message', ({ kind }: DevMessage) => kind === 'ready' && ready());
    started.on('exit', (code) => failed(new Error(`The development site ended with ${code}.`)));
  });
}

test('the leftover worker goes, and the development site registers none', async () => {
  const before = createServer((request, response) => {
    const isWorker = request.url === '/service-worker.js';
    response.writeHead(200, { 'content-type': isWorker ? 'text/javascript' : 'text/html' });
    response.end(isWorker ? stubborn : '<h1>Published page</h1>');
  });
  await new Promise<void>((ready) => before.listen(0, '127.0.0.1', ready));
  const { port } = before.address() as AddressInfo;
  const address = `http://127.0.0.1:${port}/`;
  const page = await browser.newPage();
  const heading = () => page.evaluate(() => document.querySelector('h1')?.textContent).catch(() => '');
  await page.goto(address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.register('/service-worker.js');
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  expect(await heading()).toBe('Stale page');
  await new Promise<void>((closed) => {
    before.close(() => closed());
    before.closeAllConnections();
  });

  await devSiteAt(port);
  await page.goto(address);
  await expect.poll(heading, { timeout: 60_000 }).toBe('Code on your screen');
  await page.reload({ waitUntil: 'load' });
  await page.waitForTimeout(1000);
  expect(await heading()).toBe('Code on your screen');
  const left = await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
  expect(left).toBe(0);
  expect(await page.locator('.content-date, .banner').count()).toBe(0);
}, 150_000);
