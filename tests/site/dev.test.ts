/** Writing entries with the site open: an edit reloads the page, a mistake keeps the last good one. */
import { type ChildProcess, fork } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from './browser.ts';
import type { DevMessage } from './dev-process.ts';

let browser: Browser;
let page: Page;
let site: ChildProcess;
let contentFolder: string;
const news: Extract<DevMessage, { kind: 'news' }>[] = [];

const entry = () => join(contentFolder, 'profiles/brasslight/g60d-2zs.yaml');
const about = (words: string): void => {
  const text = readFileSync(entry(), 'utf8');
  writeFileSync(entry(), text.replace(/^about: .*(?:\n {2}.*)*/m, `about: ${words}`));
};
const shows = (words: string) =>
  expect
    .poll(() => page.evaluate(() => document.querySelector('main')?.textContent ?? '').catch(() => ''), {
      timeout: 20_000,
    })
    .toContain(words);

function startSite(): Promise<string> {
  const { VITEST: _, NODE_ENV: __, ...env } = process.env;
  site = fork(fileURLToPath(new URL('./dev-process.ts', import.meta.url)), [contentFolder], { env });
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
  const address = await startSite();
  browser = await launchBrowser();
  page = await browser.newPage();
  await page.goto(`${address}profiles/brasslight/g60d-2zs/`);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  site?.kill();
  rmSync(contentFolder, { recursive: true, force: true });
});

test('an edited entry reloads the page', async () => {
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
  const before = news.length;
  writeFileSync(entry(), 'code: 8\n');
  await expect.poll(() => news.length, { timeout: 20_000 }).toBeGreaterThan(before);
  expect(news.at(-1)?.shown).toBe(false);
  expect(news.at(-1)?.files).toContain('profiles/brasslight/g60d-2zs.yaml');
  // The site may be reloading the page at this moment, which takes the place of our reload.
  await expect.poll(() => page.reload().then(() => 'reloaded', String), { timeout: 20_000 }).toBe('reloaded');
  await shows('Words that were not there before.');

  writeFileSync(entry(), good);
  about('Put right again.');
  await shows('Put right again.');
  await expect.poll(() => news.at(-1)?.files, { timeout: 20_000 }).toEqual([]);
  expect(news.at(-1)?.shown).toBe(true);
});

test('a contradiction between readings is reported, and the pages go on', async () => {
  const sheet = join(contentFolder, 'outputs/2024-02-north/readings.csv');
  const good = readFileSync(sheet, 'utf8');
  const before = news.length;
  writeFileSync(sheet, good.replace(',16,1000,1.6400,', ',16,1000,1.4600,'));
  await expect.poll(() => news.length, { timeout: 20_000 }).toBeGreaterThan(before);
  expect(news.at(-1)?.files).toEqual(['outputs/2024-02-north/readings.csv']);
  expect(news.at(-1)?.shown).toBe(true);
  writeFileSync(sheet, good);
  await expect.poll(() => news.at(-1)?.files, { timeout: 20_000 }).toEqual([]);
});
