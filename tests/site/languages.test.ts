/** A page is the same page in each language: only what is read differs, not what it is built of. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';

/** Each class of each tag, in their order. */
function classesIn(html: string): string[] {
  return [
    ...html.replace(/<script[\s\S]*?<\/script>/g, '').matchAll(/<([a-z]\w*)[^>]*? class="([^"]*)"/g),
  ].map(([, tag, classes]) => `${tag}.${classes}`);
}

test('no class of a page is said in its language', async () => {
  const folder = inject('siteFolder');
  let compared = 0;
  for (const path of await readdir(folder, { recursive: true })) {
    if (!path.endsWith('.html') || path.startsWith('es')) continue;
    const [english, spanish] = await Promise.all(
      [path, join('es', path)].map(async (file) => classesIn(await readFile(join(folder, file), 'utf8'))),
    );
    expect(new Set(spanish), path).toEqual(new Set(english));
    compared += 1;
  }
  expect(compared).toBeGreaterThan(100);
});
