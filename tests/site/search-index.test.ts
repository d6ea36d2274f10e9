/** The index made of what is searched alone is that of whole pages. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { close, createIndex } from 'pagefind';
import { afterAll, expect, inject, test } from 'vitest';
import { searchedPage } from '../../src/publish/searched-part.ts';

afterAll(() => close());

async function indexOf(pages: ReadonlyMap<string, string>): Promise<Map<string, string>> {
  const { index } = await createIndex({ forceLanguage: 'en' });
  for (const [sourcePath, content] of pages) await index?.addHTMLFile({ sourcePath, content });
  const { files = [] } = (await index?.getFiles()) ?? {};
  return new Map(files.map(({ path, content }) => [path, Buffer.from(content).toString('base64')]));
}

test('what is passed over is left out before, and nothing else', async () => {
  const folder = inject('siteFolder');
  const whole = new Map<string, string>();
  const parts = new Map<string, string>();
  let saved = 0;
  for (const path of (await readdir(folder, { recursive: true })).sort()) {
    if (!path.endsWith('.html') || path.startsWith('es')) continue;
    const html = await readFile(join(folder, path), 'utf8');
    const part = searchedPage(html);
    expect(part !== undefined, path).toBe(html.includes('data-pagefind-body'));
    if (part === undefined) continue;
    whole.set(path, html);
    parts.set(path, part);
    saved += html.length - part.length;
  }
  expect(whole.size).toBeGreaterThan(50);
  expect(saved).toBeGreaterThan(1e6);
  const [expected, found] = [await indexOf(whole), await indexOf(parts)];
  expect([...found.keys()].filter((path) => path.startsWith('fragment/')).length).toBe(whole.size);
  expect(found).toEqual(expected);
});
