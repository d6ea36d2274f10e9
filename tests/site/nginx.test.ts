/** The configuration the build writes, held against nginx itself, at the root of a server and below a path. */
import { readdirSync } from 'node:fs';
import { cp, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { readAnswers } from '../../src/answers.ts';
import { type BuiltSite, buildSite } from '../../src/publish/build.ts';
import { nginxConfiguration } from '../../src/publish/nginx.ts';
import { counted, launchBrowser, says } from './browser.ts';
import { basePath, firstEditionContent } from './editions.ts';
import { hasNginx, type Nginx, startNginx } from './nginx.ts';

const missing = !hasNginx();

/** Where the pages of the renamed profile are now, old address → new address. */
const moved = (base: string): Readonly<Record<string, string>> => {
  const [from, to] = ['profiles/brasslight/8bos-i5z/', 'profiles/brasslight/8b0s-i5z/'];
  return Object.fromEntries(
    ['', 'readings/'].map((page) => [`${base}${from}${page}`, `${base}${to}${page}`]),
  );
};

/** As it goes over the wire: `fetch` would tidy the path and unpack the body. */
function raw(
  url: string,
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<{ status: number; headers: Record<string, string>; bytes: number; body: string }> {
  const { hostname, port } = new URL(url);
  return new Promise((answered, failed) => {
    request({ hostname, port, path, headers, method }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const body = Buffer.concat(chunks);
        answered({
          status: response.statusCode ?? 0,
          headers: response.headers as Record<string, string>,
          bytes: body.length,
          body: String(body),
        });
      });
    })
      .on('error', failed)
      .end();
  });
}

/** The shared site under its path; and one of a single language, with an address that moved, at the root. */
const mounted = [
  { base: '/', languages: [''] },
  { base: basePath, languages: ['', 'es/'] },
] as const;

describe.skipIf(missing).each(mounted)('nginx, site under $base', ({ base, languages }) => {
  let work: string;
  let site: BuiltSite;
  let nginx: Nginx;
  const folder = (): string => join(work, 'site');
  const get = (path: string, headers?: Record<string, string>, method?: string) =>
    raw(nginx.origin, path.startsWith('/') ? path : `${base}${path}`, headers, method);

  beforeAll(async () => {
    work = await mkdtemp(join(tmpdir(), 'readback-for-nginx-'));
    if (base === basePath) {
      const shared = inject('site');
      await cp(shared.folder, folder(), { recursive: true });
      site = { ...shared, redirects: moved(base) };
    } else {
      const content = await firstEditionContent();
      const { answers } = await readAnswers(content.folder);
      const date = '2026-03-01';
      site = await buildSite({ answers, outDir: folder(), basePath: base, date, log: () => {} });
      await content.remove();
      expect(site.redirects).toEqual(moved(base));
    }
    expect(site.folders).toEqual(languages);
    await writeFile(join(work, 'secret.html'), 'not for riders');
    await symlink(join(work, 'secret.html'), join(folder(), 'linked.html'));
    nginx = await startNginx({ ...site, folder: folder(), basePath: base });
  });
  afterAll(async () => {
    await nginx?.close();
    await rm(work, { recursive: true, force: true });
  });

  test('pages and files with their types, their headers, and when to ask again', async () => {
    for (const [path, type] of [
      ['', 'text/html; charset=utf-8'],
      ['units/brasslight/', 'text/html; charset=utf-8'],
      ['codes.json', 'application/json; charset=utf-8'],
      ['service-worker.js', 'text/javascript; charset=utf-8'],
      ['manifest.webmanifest', 'application/manifest+json; charset=utf-8'],
      ['favicon.svg', 'image/svg+xml'],
      ['tables/amplifier-without-reflash.csv', 'text/csv; charset=utf-8'],
      ['tables/amplifier-without-reflash.dmn', 'application/xml; charset=utf-8'],
    ] as const) {
      const { status, headers } = await get(path);
      expect([status, headers['content-type'], headers['cache-control']], path).toEqual([
        200,
        type,
        'no-cache',
      ]);
      for (const [name, value] of Object.entries(site.headers))
        expect(headers[name.toLowerCase()], `${path} ${name}`).toBe(value);
      expect(headers.server).toBe('nginx');
    }
  });

  test('what the code field on other sites fetches may be read from any origin, and nothing else', async () => {
    for (const path of languages.flatMap((folder) => [
      `${folder}codes.json`,
      `${folder}code-sentences.json`,
    ])) {
      const { status, headers } = await get(path);
      expect([status, headers['access-control-allow-origin']], path).toEqual([200, '*']);
    }
    for (const path of ['', 'planner.json', 'embed/code-field.js']) {
      expect((await get(path)).headers['access-control-allow-origin'], path).toBeUndefined();
    }
  });

  test('every kind of file the site has is sent as what it is', async () => {
    const ofEnding = new Map(
      readdirSync(folder(), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && !/^pagefind$|^pf_/.test(entry.name.split('.').at(-1) ?? ''))
        .map((entry) => join(entry.parentPath, entry.name).slice(folder().length + 1))
        .filter((path) => path !== '404.html')
        .map((path) => [path.split('.').at(-1), path] as const),
    );
    expect(ofEnding.size).toBeGreaterThan(8);
    for (const path of ofEnding.values()) {
      const { status, headers } = await get(path);
      expect([status, headers['content-type']], path).not.toEqual([200, 'application/octet-stream']);
      expect(status, path).toBe(200);
    }
  });

  test('a language has a 404 page of its own', async () => {
    for (const language of languages) {
      const { status, body } = await get(`${language}nowhere/`);
      const tag = language === '' ? 'en' : language.slice(0, -1);
      expect([status, /<html lang="(\w+)"/.exec(body)?.[1]], language).toEqual([404, tag]);
    }
  });

  test.each(languages)(
    'hashed files below “%s” are kept for good, with the same headers',
    async (language) => {
      const html = (await get(language)).body;
      const script = /src="([^"]+\/assets\/[^"]+|\/assets\/[^"]+)"/.exec(html)?.[1] ?? '';
      const { status, headers } = await get(script);
      expect(status).toBe(200);
      expect(headers['cache-control']).toBe('public, max-age=31536000, immutable');
      expect(headers['content-security-policy']).toBe(site.headers['Content-Security-Policy']);
      expect(headers['x-content-type-options']).toBe('nosniff');
    },
  );

  test('text is compressed where the browser takes it, and an unchanged page is not sent twice', async () => {
    const plain = await get('units/brasslight/');
    const packed = await get('units/brasslight/', { 'accept-encoding': 'gzip' });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.headers.vary).toBe('Accept-Encoding');
    expect(packed.bytes).toBeLessThan(plain.bytes / 2);
    for (const path of ['codes.json', 'tables/amplifier-without-reflash.dmn', 'service-worker.js'])
      expect((await get(path, { 'accept-encoding': 'gzip' })).headers['content-encoding'], path).toBe('gzip');
    const again = await get('units/brasslight/', { 'if-none-match': plain.headers.etag ?? '' });
    expect([again.status, again.bytes]).toEqual([304, 0]);
  });

  test('what is not there gets the page that says so: no listing, nothing outside, no link followed', async () => {
    for (const path of [
      'nowhere/',
      'nowhere.js',
      'assets/nowhere.js',
      'assets/',
      'pagefind/',
      '404.html',
      'linked.html',
      '../secret.html',
      '..%2fsecret.html',
      '%2e%2e/secret.html',
      'units/..%2f..%2fsecret.html',
      'units/%2e%2e/%2e%2e/%2e%2e/etc/passwd',
    ]) {
      const { status, headers, body } = await get(path);
      expect([400, 404], path).toContain(status);
      expect(body, path).not.toMatch(/not for riders|root:|Index of/);
      if (status === 404 && body.includes('No such page')) {
        expect(headers['cache-control'], path).toBe('no-cache');
        expect(headers['content-security-policy'], path).toContain("default-src 'none'");
      }
    }
    for (const path of ['nowhere/', 'assets/nowhere.js', 'assets/', 'linked.html'])
      expect((await get(path)).body, path).toContain('No such page');
    // The classic slip of an alias without its slash.
    if (base !== '/') expect((await get('/help../secret.html')).status).toBe(404);
  });

  test('only reading is allowed', async () => {
    expect((await get('', {}, 'HEAD')).status).toBe(200);
    expect((await get('', {}, 'POST')).status).toBe(405);
    expect((await get('', {}, 'DELETE')).status).toBe(405);
  });

  test('addresses of a renamed profile lead on for good, and so does a missing slash', async () => {
    for (const [from, to] of [
      ['profiles/brasslight/8bos-i5z/', 'profiles/brasslight/8b0s-i5z/'],
      ['profiles/brasslight/8bos-i5z/readings/', 'profiles/brasslight/8b0s-i5z/readings/'],
      ['profiles/brasslight/8bos-i5z/?from=invoice', 'profiles/brasslight/8b0s-i5z/?from=invoice'],
      ['units/brasslight', 'units/brasslight/'],
    ]) {
      const { status, headers } = await get(from ?? '');
      expect([status, headers.location], from).toEqual([301, `${base}${to}`]);
    }
    if (base !== '/') expect((await get('/help')).headers.location).toBe('/help/');
  });

  test('a browser finds nothing of the site refused behind it', async () => {
    const browser: Browser = await launchBrowser();
    try {
      const page = await (await browser.newContext()).newPage();
      const trouble: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') trouble.push(message.text());
      });
      page.on('pageerror', (error) => trouble.push(String(error)));
      await page.goto(`${nginx.origin}${base}`, { waitUntil: 'networkidle' });
      await page.getByRole('combobox', { name: 'Code on your screen' }).fill('bass boost');
      await counted(page.locator('#page-results li')).toBeGreaterThan(0);
      const fields = 'unit=brasslight&code=5S1I-B80&amplifier=four-channels-equaliser&front=fairing-coaxial';
      await page.goto(`${nginx.origin}${base}planner/?${fields}`);
      await page.locator('#section-correction').waitFor({ state: 'attached', timeout: 60_000 });
      await page.goto(`${nginx.origin}${base}profiles/brasslight/8bos-i5z/`);
      await says(page.getByRole('heading', { level: 1 })).toBe('8B0S-I5Z');
      expect(trouble).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});

test('paths that would mean something else in such a file are refused in words', async () => {
  for (const path of ['/srv/a"; }', '/srv/$host', '/srv/a;b', '/srv/{a}', '/srv/a\nb']) {
    await expect(
      nginxConfiguration({ folder: path, basePath: '/', folders: [''], headers: {}, redirects: {} }),
    ).rejects.toThrow('a configuration of nginx cannot hold');
  }
  await expect(
    nginxConfiguration({ folder: '/srv', basePath: '/he lp/', folders: [''], headers: {}, redirects: {} }),
  ).rejects.toThrow('cannot hold');
});
