/** A build that tells what changed since a revision, and that gives the same bytes when it is made again. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { buildResultSchema } from '../../schemas/results/build.ts';
import { answersOf, readAnswers } from '../../src/answers.ts';
import { MemoryFiles, readBase } from '../../src/base/index.ts';
import { States } from '../../src/impact/index.ts';
import { pageChanges } from '../../src/views/impact/pages.ts';
import { readback } from '../cli/run.ts';

const work = mkdtempSync(join(tmpdir(), 'readback-changes-'));
const content = join(work, 'content');
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(work, { recursive: true, force: true });
});

function git(...args: string[]): void {
  const who = ['-c', 'user.name=Somebody', '-c', 'user.email=somebody@example.org'];
  execFileSync('git', ['-C', content, ...who, ...args], { stdio: 'ignore' });
}

/** Every file of a folder with its content. */
function filesIn(folder: string): Map<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  const paths = entries.map((entry) => join(entry.parentPath, entry.name)).sort();
  return new Map(paths.map((path) => [path.slice(folder.length), readFileSync(path, 'latin1')]));
}

test('build --since says in the feed which values moved, and two such builds are alike to the byte', async () => {
  vi.stubEnv('SOURCE_DATE_EPOCH', '1772323200');
  cpSync(new URL('../../src/check/example-base/', import.meta.url).pathname, content, { recursive: true });
  execFileSync('git', ['init', '-q', content]);
  git('add', '-A');
  git('commit', '-qm', 'Before');
  // One profile comes to three fifths of what it was, in the only session that measured it.
  const sheet = join(content, 'outputs/2025-05-shed/readings.csv');
  const rows = readFileSync(sheet, 'utf8').split('\n');
  const lower = rows.map((row) => {
    const cells = row.split(',');
    if (cells[0] !== 'moorlight/kn-2093') return row;
    return cells.with(4, (Number(cells[4]) * 0.6).toFixed(4)).join(',');
  });
  writeFileSync(sheet, lower.join('\n'));

  const folders = ['one', 'two'].map((name) => join(work, name));
  for (const folder of folders) {
    const { code, out } = await readback(
      ...['build', '--content', content, '--out', folder, '--base', '/help/', '--since', 'HEAD', '--json'],
    );
    expect(code).toBe(0);
    const result = buildResultSchema.parse(JSON.parse(out));
    expect(result.since).toMatchObject({ profiles: 1 });
  }
  const [one, two] = folders.map(filesIn);
  expect([...(two ?? []).keys()]).toEqual([...(one ?? []).keys()]);
  const differing = [...(one ?? [])].filter(([path, text]) => two?.get(path) !== text).map(([path]) => path);
  expect(differing).toEqual([]);

  // The pages a comparison tells of are those that are built for entries.
  const nothing = answersOf((await readBase(new MemoryFiles('nothing', new Map()))).base);
  const { added } = pageChanges(new States(nothing, (await readAnswers(content)).answers));
  const ofEntries = /^\/((?:units|profiles|plans|tables|guides|sources)\/.+\/)index\.html$/;
  const built = [...(one ?? new Map<string, string>()).keys()].flatMap(
    (path) => ofEntries.exec(path)?.[1] ?? [],
  );
  expect(added).toEqual(built.sort());

  const feed = one?.get('/changes.atom') ?? '';
  expect(feed).toContain('<title>Changed: KN-2093 (Moorlight)</title>');
  const text = readFileSync(join(work, 'one/changes.atom'), 'utf8');
  expect(text).toMatch(
    /<content type="text">Clean output: 1\.26\d?\sV ±.+; before, 2\.10\d?\sV ±.+\.<\/content>/,
  );
  // The page of the profile is known to have changed, and only that one.
  const sitemap = one?.get('/sitemap.xml') ?? '';
  expect(sitemap.match(/<lastmod>/g)).toHaveLength(1);
  expect(sitemap).toMatch(/profiles\/moorlight\/kn-2093\/<\/loc>\s+<lastmod>2026-03-01<\/lastmod>/);
});

test('a revision that is not there, or a folder without git, is told before anything is built', async () => {
  const out = join(work, 'three');
  const unknown = await readback('build', '--content', content, '--out', out, '--since', 'nowhere');
  expect(unknown.code).toBe(2);
  expect(unknown.err).toContain('has no revision “nowhere”');
  const bare = join(work, 'bare');
  cpSync(new URL('../../src/check/example-base/', import.meta.url).pathname, bare, { recursive: true });
  const without = await readback('build', '--content', bare, '--out', out, '--since', 'HEAD');
  expect(without.code).toBe(2);
  expect(without.err).toContain('is not in a git repository');
});
