/** A content repository as it is begun builds, from within it and with the program beside its own name. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readback } from '../cli/run.ts';

const work = mkdtempSync(join(tmpdir(), 'readback-begun-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

test('the site of a new content repository is built where the shop stands', async () => {
  const shop = join(work, 'shop');
  expect((await readback('init', shop)).code).toBe(0);
  // In the repository and nowhere else: packages of the program are not to be found from there.
  execFileSync(process.execPath, [resolve('src/cli/readback.ts'), 'build'], { cwd: shop, stdio: 'pipe' });
  const page = readFileSync(join(shop, 'dist/profiles/moorlight/km-4417/index.html'), 'utf8');
  expect(page).toMatch(/6\.30\sV/);
  expect(readFileSync(join(shop, 'dist/index.html'), 'utf8')).toContain('Sample Audio Bench');
});
