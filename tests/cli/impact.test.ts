/** `readback impact` on real git repositories. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { impactResultSchema } from '../../schemas/results/impact.ts';
import { readback } from './run.ts';

const work = mkdtempSync(join(tmpdir(), 'readback-impact-'));
const content = join(work, 'content');
afterAll(() => rmSync(work, { recursive: true, force: true }));

function git(...args: string[]): string {
  const who = ['-c', 'user.name=Test', '-c', 'user.email=test@sample.example'];
  const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null' };
  return execFileSync('git', ['-C', work, ...who, ...args], { encoding: 'utf8', env }).trim();
}

/** `main` with the example base, and a branch that left it. */
beforeEach(() => {
  rmSync(work, { recursive: true, force: true });
  const example = fileURLToPath(new URL('../../src/check/example-base/', import.meta.url));
  cpSync(example, content, { recursive: true });
  git('init', '-q', '-b', 'main');
  git('add', '-A');
  git('commit', '-qm', 'Begin');
  git('switch', '-qc', 'edit');
});

function edit(file: string, from: string, to: string): void {
  const before = readFileSync(join(content, file), 'utf8');
  if (before.split(from).length !== 2) throw new Error(`“${from}” is not once in ${file}`);
  writeFileSync(join(content, file), before.replace(from, to));
}
const impact = (...more: string[]) => readback('impact', '--content', content, ...more);
async function result(...more: string[]) {
  const { code, out, err } = await impact('--json', ...more);
  expect(err).toBe('');
  return { code, ...impactResultSchema.parse(JSON.parse(out)) };
}

test('nothing changed: one sentence, exit code 0', async () => {
  const commit = git('rev-parse', 'HEAD').slice(0, 12);
  const { code, out, err } = await impact();
  expect({ code, out, err }).toEqual({
    code: 0,
    out: `Compared with where this branch left main (${commit}), nothing has changed.`,
    err: '',
  });
});

test('an answer that flips without a source: told first, exit code 1; the files beside it say the same', async () => {
  edit('plans/two-channel.yaml', 'leastVolts: 1,', 'leastVolts: 4,');
  const [text, json, markdown] = ['report.txt', 'report.json', 'deep/report.md'].map((name) =>
    join(work, name),
  );
  const { code, out } = await impact(...[text, json, markdown].flatMap((file) => ['--out', file ?? '']));
  expect(code).toBe(1);
  const path = `${content.replace(/^.*\/(?=readback-impact-)/, '')}`;
  expect(out).toContain(': 1 verdict of plans flipped. 1 profile says something else.\n');
  expect(out.indexOf('Answers changed without a new source')).toBeLessThan(
    out.indexOf('Verdicts that flipped'),
  );
  expect(out).toContain(`${path}/plans/two-channel.yaml:5:22\n`);
  expect(out).toContain('\n  KN-2093, Moorlight\n    Two-channel amplifier: Keep → Reflash\n');
  expect(readFileSync(text ?? '', 'utf8')).toBe(`${out}\n`);
  expect(readFileSync(markdown ?? '', 'utf8')).toMatch(/^<!-- readback impact -->\n### /);
  const data = impactResultSchema.parse(JSON.parse(readFileSync(json ?? '', 'utf8')));
  expect(data.profiles).toMatchObject([
    {
      profile: 'moorlight/kn-2093',
      verdicts: [
        {
          plan: 'two-channel',
          before: 'keep',
          now: 'reflash',
          causes: [{ kind: 'plans', id: 'two-channel' }],
        },
      ],
    },
  ]);
  expect(data.findings.map(({ rule, file, line }) => `${rule} ${file}:${line}`)).toEqual([
    'flip-without-source plans/two-channel.yaml:5',
  ]);
  expect((await impact('--format', 'json')).out).toBe((await impact('--json')).out);
});

test('an exception sets the finding aside; wording alone has none', async () => {
  edit('plans/two-channel.yaml', 'leastVolts: 1,', 'leastVolts: 4,');
  execFileSync('mkdir', [join(content, 'exceptions')]);
  writeFileSync(
    join(content, 'exceptions/plan.yaml'),
    'rule: flip-without-source\nfile: plans/two-channel.yaml\nreason: It said so in the shop all along.\nby: Bench lead\nuntil: 2999-12-31\n',
  );
  expect(await result()).toMatchObject({ code: 0, findings: [], setAside: 1 });
  git('checkout', '-q', '.');
  rmSync(join(content, 'exceptions'), { recursive: true });
  edit('plans/two-channel.yaml', 'summary: A small', 'summary: A tiny');
  const { code, out } = await impact();
  expect(code).toBe(0);
  expect(out).toContain(': no answer changes.\n');
  expect(out).toContain('plans/two-channel.yaml: edited, wording alone');
});

test('what main did meanwhile is no part of the change; a revision that is given is taken as it is', async () => {
  git('switch', '-q', 'main');
  edit('plans/two-channel.yaml', 'leastVolts: 1,', 'leastVolts: 4,');
  git('commit', '-qam', 'Meanwhile');
  git('switch', '-q', 'edit');
  expect(await result()).toMatchObject({
    code: 0,
    profiles: [],
    since: { commit: git('rev-parse', 'main~1') },
  });
  const against = await result('--since', 'main');
  expect(against.profiles[0]?.verdicts).toMatchObject([{ before: 'reflash', now: 'keep' }]);
});

test('pages: new, moved with a redirect, gone without one', async () => {
  renameSync(
    join(content, 'profiles/moorlight/rt-5561.yaml'),
    join(content, 'profiles/moorlight/rt-5562.yaml'),
  );
  const sheet = join(content, 'outputs/2026-02-loft/readings.csv');
  writeFileSync(sheet, readFileSync(sheet, 'utf8').replaceAll('rt-5561', 'rt-5562'));
  git('add', '-A');
  const without = await result();
  expect(without.profiles).toEqual([]);
  const [was, is] = ['profiles/moorlight/rt-5561/', 'profiles/moorlight/rt-5562/'];
  const removed = (redirected: boolean) =>
    ['', 'readings/'].map((page) => ({ path: `${was}${page}`, now: `${is}${page}`, redirected }));
  expect(without.pages).toEqual({ added: [is, `${is}readings/`], removed: removed(false) });
  expect((await impact()).out).toContain(
    `Gone, and its address leads nowhere: /${was} (it is at /${is} now)`,
  );
  edit(
    'profiles/moorlight/rt-5562.yaml',
    'code: "RT-5561"',
    'code: "RT-5561"\nformerly: [moorlight/rt-5561]',
  );
  expect((await result()).pages.removed).toEqual(removed(true));
});

test('check --since tells of it too, check alone does not', async () => {
  edit('plans/two-channel.yaml', 'leastVolts: 1,', 'leastVolts: 4,');
  const since = await readback('check', '--content', content, '--since', 'HEAD');
  expect(since.code).toBe(1);
  expect(since.out).toContain('plans/two-channel.yaml:5:22  warning  flip-without-source');
  expect((await readback('check', '--content', content)).code).toBe(0);
});

test('it cannot run: entries that cannot be read, now or then; no such revision; no default branch; an odd file', async () => {
  edit('plans/two-channel.yaml', 'feeds:', 'fedes:');
  const now = await impact();
  expect(now).toMatchObject({ code: 1, out: '' });
  expect(now.err).toContain('Nothing was compared: put this right first.');
  git('commit', '-qam', 'A slip');
  git('checkout', '-q', 'main', '--', '.');
  expect(await impact('--since', 'HEAD')).toMatchObject({ code: 2, out: '' });
  expect((await impact('--since', 'nowhere')).err).toContain('has no revision “nowhere”');
  expect((await impact('--out', 'x.pdf')).err).toContain('Give one of: .txt, .json, .md.');
  git('branch', '-qm', 'main', 'trunk');
  const lost = await impact();
  expect(lost.code).toBe(2);
  expect(lost.err).toMatch(
    /^Nobody can tell where the branch of .* began: .*\n→ Give a branch, a tag or a commit with --since REV/,
  );
});
