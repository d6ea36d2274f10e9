/** The server for looking at a published site. */
import { expect, inject, test } from 'vitest';
import { serveFolder } from '../../src/publish/serve.ts';

const get = (path: string): Promise<Response> =>
  fetch(new URL(path, inject('siteAddress')), { redirect: 'manual' });

test('pages and files come with their types', async () => {
  const types = await Promise.all(
    ['', 'codes.json', 'favicon.svg', 'pagefind/pagefind.js'].map(async (path) =>
      (await get(path)).headers.get('content-type'),
    ),
  );
  expect(types).toEqual(['text/html;charset=utf-8', 'application/json', 'image/svg+xml', 'text/javascript']);
});

test('what is not there gets the page that says so, with status 404', async () => {
  for (const path of [
    'nowhere/',
    'units/nowhere/',
    '/outside/',
    '/help/../secret',
    '..%2f..%2fetc%2fpasswd',
  ]) {
    const response = await get(path);
    expect(response.status, path).toBe(404);
    expect(await response.text(), path).toContain('No such page');
  }
});

test('the root and the base path without its slash lead to the start page', async () => {
  for (const path of ['/', '/help']) {
    const response = await get(path);
    expect(response.status).toBe(302);
    expect(response.headers.get('location')).toBe('/help/');
  }
});

test('pages are asked for anew, hashed files are kept', async () => {
  expect((await get('')).headers.get('cache-control')).toBe('no-cache');
  const html = await (await get('')).text();
  const script = /src="([^"]+\/assets\/[^"]+)"/.exec(html)?.[1];
  expect(script).toBeDefined();
  expect((await get(script ?? '')).headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
});

test('every answer carries the headers a browser is to hold pages to', async () => {
  for (const path of ['', 'nowhere/', 'codes.json', 'service-worker.js']) {
    const { headers } = await get(path);
    expect(headers.get('content-security-policy'), path).toMatch(
      /^default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'sha256-[^;]+; style-src 'self' 'sha256-.*; frame-ancestors 'self'$/,
    );
    expect(headers.get('x-content-type-options'), path).toBe('nosniff');
    expect(headers.get('referrer-policy'), path).toBe('same-origin');
    expect(headers.get('permissions-policy'), path).toContain('camera=()');
  }
});

test('a further language has its own 404 page, files to keep, and files the code field elsewhere may have', async () => {
  const missing = await get('es/nowhere/');
  expect([missing.status, /<html lang="(\w+)"/.exec(await missing.text())?.[1]]).toEqual([404, 'es']);
  const script = /src="([^"]+\/assets\/[^"]+)"/.exec(await (await get('es/')).text())?.[1] ?? '';
  expect((await get(script)).headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
  expect((await get('es/codes.json')).headers.get('access-control-allow-origin')).toBe('*');
});

test('an unchanged page is not sent twice', async () => {
  const etag = (await get('')).headers.get('etag') ?? '';
  const again = await fetch(inject('siteAddress'), { headers: { 'if-none-match': etag } });
  expect(again.status).toBe(304);
});

test('only reading is allowed', async () => {
  const response = await fetch(inject('siteAddress'), { method: 'POST' });
  expect(response.status).toBe(405);
});

test('a folder without a site and a port that is taken are said in words', async () => {
  const port = Number(new URL(inject('siteAddress')).port);
  await expect(
    serveFolder({
      folder: '/nonexistent',
      basePath: '/',
      host: '127.0.0.1',
      port: 0,
      folders: [''],
      headers: {},
    }),
  ).rejects.toThrow('There is no site in /nonexistent.');
  await expect(
    serveFolder({
      folder: inject('siteFolder'),
      basePath: '/',
      host: '127.0.0.1',
      port,
      folders: [''],
      headers: {},
    }),
  ).rejects.toThrow(`Port ${port} is taken.`);
});
