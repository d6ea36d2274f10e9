/** Builds by command: the same content gives the same bytes, and one that fails takes nothing away. */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { buildResultSchema } from '../../schemas/results/build.ts';
import { nginxConfiguration } from '../../src/publish/nginx.ts';
import type { ContentCopy } from '../content-copy.ts';
import { basePath, firstEditionContent } from './editions.ts';

const work = mkdtempSync(join(tmpdir(), 'readback-again-'));
let content: ContentCopy;
beforeAll(async () => {
  content = await firstEditionContent();
});
afterAll(async () => {
  await content.remove();
  rmSync(work, { recursive: true, force: true });
});

/** In a process of its own, at another hour and under another language than the edition it is held against. */
async function build(out: string) {
  const argv = ['--content', content.folder, '--out', out, '--base', basePath, '--nginx', `${out}.conf`];
  return promisify(execFile)('node', ['src/cli/readback.ts', 'build', '--json', ...argv], {
    env: { ...process.env, SOURCE_DATE_EPOCH: '1772323200', TZ: 'America/Los_Angeles', LANG: 'C' },
    maxBuffer: 2 ** 24,
  }).then(
    ({ stdout, stderr }) => ({ code: 0, stdout, stderr }),
    (error: { code: number; stdout: string; stderr: string }) => error,
  );
}

/** Every file with a digest of what it holds. */
function filesOf(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [relative(folder, path), createHash('sha256').update(readFileSync(path)).digest('hex')])
      .sort(([a = ''], [b = '']) => (a < b ? -1 : 1)),
  );
}

test('two builds of the same content, in other folders and time zones, are the same to the byte', async () => {
  const edition = inject('firstEdition');
  const again = await build(join(work, 'one'));
  expect([again.code, again.code === 0 ? '' : again.stderr]).toEqual([0, '']);
  const [one, two] = [filesOf(edition.folder), filesOf(join(work, 'one'))];
  expect(Object.keys(one).length).toBeGreaterThan(200);
  expect(two).toEqual(one);

  const result = buildResultSchema.parse(JSON.parse(again.stdout));
  const withoutFolders = (conf: string) => conf.replaceAll(/alias ".*"/g, '');
  const conf = withoutFolders(readFileSync(result.nginx ?? '', 'utf8'));
  expect(conf).toBe(withoutFolders(await nginxConfiguration({ ...edition, basePath })));
  expect(conf).toContain(result.headers['Content-Security-Policy']);
});

test('at the old address of a renamed profile is a page that leads on, whatever the host does', async () => {
  const html = readFileSync(join(work, 'one/profiles/brasslight/8bos-i5z/index.html'), 'utf8');
  const address = '/help/profiles/brasslight/8b0s-i5z/';
  expect(html).toContain(`<meta http-equiv="refresh" content="0; url=${address}">`);
  expect(html).toMatch(/<link rel="canonical" href="https:\/\/[^"]+\/profiles\/brasslight\/8b0s-i5z\/">/);
  expect(html).toMatch(new RegExp(`<a class="button" href="${address}">8B0S-I5Z of Brasslight`));
  expect(html).toContain('<meta name="robots" content="noindex">');
  const readings = readFileSync(join(work, 'one/profiles/brasslight/8bos-i5z/readings/index.html'), 'utf8');
  expect(readings).toContain(`url=${address}readings/`);
});

test('a build that finds fault leaves the last good site as it was, and nothing beside it', async () => {
  const out = join(work, 'one');
  const [before, beside] = [filesOf(out), readdirSync(work)];
  expect(Object.keys(before).length).toBeGreaterThan(200);
  const undo = await content.edit('profiles/brasslight/8b0s-i5z.yaml', 'origin: factory', 'origin: factori');
  expect((await build(out)).code).toBe(1);
  expect(filesOf(out)).toEqual(before);
  await undo();

  const link = join(content.folder, 'guides/outside.md');
  symlinkSync('/etc/hostname', link);
  const linked = await build(out);
  expect([linked.code, linked.stderr]).toEqual([1, expect.stringContaining('links are not followed')]);
  expect(filesOf(out)).toEqual(before);
  rmSync(link);
  expect(readdirSync(work)).toEqual(beside);
});
