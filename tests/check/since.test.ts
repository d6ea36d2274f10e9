/** `readback check --since REV` on real git repositories. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { checkResultSchema } from '../../schemas/results/check.ts';
import { readback } from '../cli/run.ts';

const exampleBase = fileURLToPath(new URL('../../src/check/example-base/', import.meta.url));
const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A repository with the example base in it, at its root or in a folder. */
class Repository {
  readonly root = mkdtempSync(join(tmpdir(), 'readback-since-'));
  readonly content: string;

  constructor(below = '') {
    made.push(this.root);
    this.content = join(this.root, below);
    mkdirSync(this.content, { recursive: true });
    cpSync(exampleBase, this.content, { recursive: true });
    this.git('init', '-q', '-b', 'main');
    this.commit();
  }

  git(...args: string[]): void {
    execFileSync(
      'git',
      ['-C', this.root, '-c', 'user.name=Test', '-c', 'user.email=test@sample.example', ...args],
      { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null' } },
    );
  }

  commit(): void {
    this.git('add', '-A');
    this.git('commit', '-q', '--no-verify', '-m', 'A state');
  }

  edit(file: string, from: string, to: string): void {
    const path = join(this.content, file);
    const parts = readFileSync(path, 'utf8').split(from);
    if (parts.length !== 2) throw new Error(`“${from}” occurs ${parts.length - 1} times in ${file}`);
    writeFileSync(path, parts.join(to));
  }

  async newSince(revision: string) {
    const { code, out, err } = await readback(
      'check',
      '--content',
      this.content,
      '--since',
      revision,
      '--json',
    );
    expect(err).toBe('');
    const result = checkResultSchema.parse(JSON.parse(out));
    return {
      code,
      older: result.since?.older,
      found: result.findings.map(({ rule, file, line }) => `${rule} ${file}:${line}`),
    };
  }
}

const sheet = 'outputs/2025-05-shed/readings.csv';
const otherSheet = 'outputs/2026-02-loft/readings.csv';
const letter = 'statements/letter-rear.yaml';
const bulletin = 'statements/bulletin-loud-profile.yaml';

test('only what the change brings in, committed or not', async () => {
  const repository = new Repository();
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  repository.commit();
  expect(await repository.newSince('HEAD')).toEqual({ code: 0, older: 1, found: [] });
  expect(await repository.newSince('HEAD~1')).toEqual({
    code: 1,
    older: 0,
    found: [`dangling-link ${letter}:1`],
  });
  repository.edit('profiles/moorlight/kn-2093.yaml', 'origin:', 'orign:');
  expect(await repository.newSince('HEAD')).toEqual({
    code: 1,
    older: 1,
    found: ['unknown-key profiles/moorlight/kn-2093.yaml:3'],
  });
});

test('lines moved by the change make nothing new; a second like mistake does', async () => {
  const repository = new Repository();
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  repository.commit();
  repository.edit(letter, 'source: riders-leter', '# A comment.\n\nsource: riders-leter');
  expect(await repository.newSince('HEAD')).toEqual({ code: 0, older: 1, found: [] });
  const second = readFileSync(join(repository.content, letter), 'utf8').replace(
    'value: false',
    'value: false ',
  );
  writeFileSync(join(repository.content, 'statements/letter-two.yaml'), second);
  expect((await repository.newSince('HEAD')).found).toContain('dangling-link statements/letter-two.yaml:3');
});

test('a contradiction in an entry the change did not touch is seen', async () => {
  const repository = new Repository();
  // Both sheets shift together, so that they agree with each other and no longer with the bulletin.
  for (const file of [sheet, otherSheet]) {
    const path = join(repository.content, file);
    const halved = readFileSync(path, 'utf8').replace(
      /^(moorlight\/km-4417,\w+,\d+,[\d.]+,)([\d.]+)/gm,
      (_, row: string, volts: string) => `${row}${(Number(volts) / 2).toFixed(4)}`,
    );
    writeFileSync(path, halved);
  }
  const { code, found } = await repository.newSince('HEAD');
  expect(code).toBe(1);
  expect(found).toContain(`stated-versus-computed ${bulletin}:6`);
});

test('a contradiction that was there before counts where the change touches its other side', async () => {
  const repository = new Repository();
  repository.edit(sheet, 'FL,16,1000,1.5841', 'FL,16,1000,1.5481');
  repository.commit();
  expect((await repository.newSince('HEAD')).found).toEqual([]);
  repository.edit(otherSheet, 'FL,16,1000,1.5790', 'FL,16,1000,1.5791');
  expect(await repository.newSince('HEAD')).toMatchObject({
    code: 1,
    found: [`sessions-disagree ${sheet}:17`],
  });
});

test('a content folder inside a larger repository', async () => {
  const repository = new Repository('shop/our content');
  writeFileSync(join(repository.root, 'README.md'), 'Not content.\n');
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  repository.commit();
  expect(await repository.newSince('main')).toEqual({ code: 0, older: 1, found: [] });
  expect((await repository.newSince('main~1')).found).toEqual([`dangling-link ${letter}:1`]);
});

test('a content folder that was not there yet: all is new', async () => {
  const repository = new Repository('content');
  repository.git('mv', 'content', 'entries');
  rmSync(join(repository.root, 'content'), { recursive: true, force: true });
  repository.edit('../entries/statements/letter-rear.yaml', 'source: rider-letter', 'source: riders-leter');
  const { code, out } = await readback(
    'check',
    '--content',
    join(repository.root, 'entries'),
    '--since',
    'HEAD',
    '--json',
  );
  expect(code).toBe(1);
  expect(checkResultSchema.parse(JSON.parse(out)).findings.map(({ rule }) => rule)).toEqual([
    'dangling-link',
  ]);
});

test('a renamed entry brings in only what its new name breaks', async () => {
  const repository = new Repository();
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  repository.edit('profiles/moorlight/kn-2093.yaml', 'sources: [shed-session]', 'sources: [shed-sesion]');
  repository.commit();
  repository.git('mv', letter, 'statements/letter-of-a-rider.yaml');
  expect(await repository.newSince('HEAD')).toEqual({ code: 0, older: 2, found: [] });
  repository.git('mv', 'profiles/moorlight/kn-2093.yaml', 'profiles/moorlight/kn-2094.yaml');
  // Its rows name the profile as it was called.
  const { found } = await repository.newSince('HEAD');
  expect(found.filter((one) => one.includes('kn-2094.yaml'))).toEqual([]);
  expect(found.every((one) => one.startsWith('dangling-link'))).toBe(true);
});

test('links that were there before are not news', async () => {
  const repository = new Repository();
  symlinkSync('/etc/hostname', join(repository.content, 'sources/linked.yaml'));
  repository.commit();
  expect(await repository.newSince('HEAD')).toEqual({ code: 0, older: 1, found: [] });
});

test('an exception taken away brings its finding back as new', async () => {
  const repository = new Repository();
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  mkdirSync(join(repository.content, 'exceptions'));
  writeFileSync(
    join(repository.content, 'exceptions/letter.yaml'),
    `rule: dangling-link\nfile: ${letter}\nreason: Lost.\nby: Bench lead\nuntil: 2999-12-31\n`,
  );
  repository.commit();
  expect(await repository.newSince('HEAD')).toEqual({ code: 0, older: 0, found: [] });
  rmSync(join(repository.content, 'exceptions/letter.yaml'));
  expect((await repository.newSince('HEAD')).found).toEqual([`dangling-link ${letter}:1`]);
});

test('as text: the closing line says since when', async () => {
  const repository = new Repository();
  repository.edit(letter, 'source: rider-letter', 'source: riders-leter');
  repository.commit();
  const { out } = await readback('check', '--content', repository.content, '--since', 'HEAD');
  expect(out).toBe('Nothing new is contradictory or unsourced since HEAD. 1 older finding left out.');
});

test.each(['no-such-branch', '--output=x', 'HEAD:site.yaml', ''])(
  'a revision that is not there (%j): exit code 2 and a message',
  async (revision) => {
    const repository = new Repository();
    const { code, out, err } = await readback(
      'check',
      '--content',
      repository.content,
      `--since=${revision}`,
    );
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe(
      `The repository of ${repository.content} has no revision “${revision}”.\n→ Give a branch, a tag or a commit; where only the latest commit was fetched, fetch the whole history.`,
    );
  },
);

test('a folder in no repository: exit code 2 and a message', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'readback-since-'));
  made.push(folder);
  const { code, err } = await readback('check', '--content', folder, '--since', 'HEAD');
  expect(code).toBe(2);
  expect(err).toContain('is not in a git repository.\n→ Leave --since out');
});

test('no git: exit code 2 and a message', async () => {
  const repository = new Repository();
  const { PATH: path } = process.env;
  process.env.PATH = '/nowhere';
  try {
    const { code, err } = await readback('check', '--content', repository.content, '--since', 'HEAD');
    expect(code).toBe(2);
    expect(err).toMatch(/^--since needs the program git/);
  } finally {
    process.env.PATH = path;
  }
});
