import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { stampPages } from '../../src/publish/stamp-pages.ts';
import { digestStamp, stamps } from '../../src/views/stamps.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'readback-stamps-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Writes a site of two files anew and stamps it. */
async function site(codes: string, words: string, date: string) {
  mkdirSync(join(folder, 'units'), { recursive: true });
  writeFileSync(join(folder, 'codes.json'), codes);
  writeFileSync(
    join(folder, 'units/index.html'),
    `<html data-version="${stamps.version}"><p>${words} <time datetime="${stamps.date}">${stamps.dateInWords}</time>`,
  );
  writeFileSync(join(folder, 'index.html'), `<p data-codes="codes.json?v=${digestStamp('codes.json')}">`);
  const { version, files } = await stampPages(folder, date);
  const by = (path: string) => {
    const file = files.find((one) => one.path === path);
    if (!file) throw new Error(`no ${path}`);
    return file;
  };
  return { version, start: by('index.html'), units: by('units/index.html'), codes: by('codes.json') };
}
const page = (path: string) => readFileSync(join(folder, path), 'utf8');

test('pages say version and date, and name the content of a file', async () => {
  const { version, codes } = await site('[1]', 'Units', '2026-03-01');
  expect(page('units/index.html')).toBe(
    `<html data-version="${version}"><p>Units <time datetime="2026-03-01">1 March 2026</time>`,
  );
  expect(page('index.html')).toBe(`<p data-codes="codes.json?v=${codes.digest}">`);
});

test('another date is another version, but no page has changed by it', async () => {
  const first = await site('[1]', 'Units', '2026-03-01');
  const again = await site('[1]', 'Units', '2026-03-01');
  const later = await site('[1]', 'Units', '2026-03-02');
  expect(again).toEqual(first);
  expect(later.version).not.toBe(first.version);
  expect(later.units.revision).toBe(first.units.revision);
  expect(later.units.digest).not.toBe(first.units.digest);
});

test('a changed file changes the version and the pages that name it, no other', async () => {
  const first = await site('[1]', 'Units', '2026-03-01');
  const second = await site('[2]', 'Units', '2026-03-01');
  expect(second.version).not.toBe(first.version);
  expect(second.start.revision).not.toBe(first.start.revision);
  expect(second.units.revision).toBe(first.units.revision);
});

test('a page that names a file that is not there stops the build', async () => {
  writeFileSync(join(folder, 'index.html'), digestStamp('nowhere.json'));
  await expect(stampPages(folder, '2026-03-01')).rejects.toThrow('names the file nowhere.json');
});

test('letters outside ASCII stay what they are, and a script with such letters is let run', async () => {
  const script = 'say("−3 dB · “ok” · Ω · 日本")';
  writeFileSync(
    join(folder, 'index.html'),
    `<meta content="${stamps.contentPolicy}"><p title="Año">−3 dB · ${stamps.dateInWords}</p><script>${script}</script>`,
  );
  const { files } = await stampPages(folder, '2026-03-01');
  const digest = createHash('sha256').update(script).digest('base64');
  const text = page('index.html');
  expect(text).toContain(`'sha256-${digest}'`);
  expect(text).toContain(`"><p title="Año">−3 dB · 1 March 2026</p><script>${script}</script>`);
  expect(files.map(({ bytes }) => bytes)).toEqual([Buffer.byteLength(text)]);
});
