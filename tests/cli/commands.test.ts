import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildResultSchema } from '../../schemas/results/build.ts';
import { checkResultSchema } from '../../schemas/results/check.ts';
import { explainResultSchema } from '../../schemas/results/explain.ts';
import { findResultSchema } from '../../schemas/results/find.ts';
import { ContentCopy } from '../content-copy.ts';
import { readback } from './run.ts';

let broken: ContentCopy;
beforeAll(async () => {
  broken = await ContentCopy.make();
  await broken.edit('profiles/brasslight/8b0s-i5z.yaml', 'origin: factory', 'origin: factori');
});
afterAll(() => broken.remove());

describe('check', () => {
  test('a clean content folder: exit code 0 and a closing line', async () => {
    expect(await readback('check')).toEqual({
      code: 0,
      out: 'No contradictions, nothing unsourced.',
      err: '',
    });
  });

  test('findings: exit code 1, each with place, what, and what to do', async () => {
    const { code, out } = await readback('check', '--content', broken.folder);
    expect(code).toBe(1);
    expect(out.replaceAll(broken.folder, 'CONTENT')).toMatchInlineSnapshot(`
      "CONTENT/profiles/brasslight/8b0s-i5z.yaml:6:9  error  schema
        “origin” cannot be "factori".
          6 │ origin: factori
            │         ^^^^^^^
        → Did you mean “factory”? It is one of: factory, dealer-update, third-party.

      readback check --explain RULE says more about a rule.
      1 error in 1 file."
    `);
  });

  test.each([['--json'], ['--format', 'json']])(
    '%s %s: one object of the published shape',
    async (...flags) => {
      const { code, out, err } = await readback('check', '--content', broken.folder, ...flags);
      expect(code).toBe(1);
      expect(err).toBe('');
      const result = checkResultSchema.parse(JSON.parse(out));
      expect(result.findings).toMatchObject([
        { rule: 'schema', severity: 'error', file: 'profiles/brasslight/8b0s-i5z.yaml', line: 6, column: 9 },
      ]);
      expect(result.counts).toEqual({ error: 1, warning: 0, note: 0 });
    },
  );

  test('no such folder: exit code 2, a message, no stack trace', async () => {
    const { code, out, err } = await readback('check', '--content', 'no/such/folder');
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toBe(
      'The content folder no/such/folder cannot be read (ENOENT).\n→ Give the folder that holds site.yaml with --content DIR.',
    );
  });
});

describe('find', () => {
  test('a code as displayed is found', async () => {
    const { code, out } = await readback('find', '8B0S-I5Z', '--unit', 'brasslight', '--json');
    expect(code).toBe(0);
    const result = findResultSchema.parse(JSON.parse(out));
    expect(result.candidates[0]).toMatchObject({
      code: '8B0S-I5Z',
      family: 'brasslight',
      profile: 'brasslight/8b0s-i5z',
    });
  });

  test('a misread code is found, and the note says what was misread', async () => {
    const { out } = await readback('find', 'g6od2zs', '--json');
    const result = findResultSchema.parse(JSON.parse(out));
    expect(result.candidates[0]?.code).toBe('G60D-2ZS');
    expect(result.candidates[0]?.probability).toBeGreaterThan(0.9);
  });

  test('a stranger’s code is not taken for a known one: exit code 1 and advice', async () => {
    const { code, out } = await readback('find', 'QQ77-XYW');
    expect(code).toBe(1);
    expect(out).toContain('No profile known here has this code.');
  });

  test('an unknown unit: exit code 2 and the nearest', async () => {
    const { code, err } = await readback('find', '8B0S-I5Z', '--unit', 'braslight');
    expect(code).toBe(2);
    expect(err).toBe('There is no unit “braslight”.\n→ Did you mean --unit brasslight?');
  });
});

describe('explain', () => {
  test('every characteristic with its uncertainty, readings and sources', async () => {
    const { code, out } = await readback('explain', '8B0S-I5Z', '--unit', 'Brasslight', '--json');
    expect(code).toBe(0);
    const result = explainResultSchema.parse(JSON.parse(out));
    expect(result.sentence).toMatch(/^Clean up to step 24 of 30: /);
    expect(result.characteristics.length).toBeGreaterThanOrEqual(6);
    for (const one of result.characteristics) {
      expect(one.readings.length, one.name).toBeGreaterThan(0);
      expect(one.sources.length, one.name).toBeGreaterThan(0);
    }
    expect(result.plans.length).toBeGreaterThan(0);
  });

  test('as text: the sentence first, then values, then plans', async () => {
    const { out, err } = await readback('explain', '8b0s i5z', '--unit', 'brasslight');
    expect(err).toMatch(/^Easily taken for 8B0S-15Z\. /);
    const lines = out.split('\n');
    expect(lines[0]).toBe('8B0S-I5Z  Brasslight');
    expect(lines[1]).toMatch(/^Clean up to step 24 of 30/);
    expect(out).toMatch(
      /clean-volts +7\.\d+\u00a0V ±\u00a00\.\d+\u00a0V +step 24, 1\u00a0kHz, 4 Ω, 14\.4 V supply; \d+ readings: bench-/,
    );
  });

  test('a misread code is not explained as if it were read right: candidates instead', async () => {
    const { code, out, err } = await readback('explain', 'G6OD-2ZS', '--unit', 'brasslight');
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('“Brasslight” has no profile with exactly this code.');
    expect(err).toContain('G60D-2ZS');
  });

  test('a code that is not sure: exit code 1, advice and candidates on the error stream', async () => {
    const { code, out, err } = await readback('explain', 'QQ77-XYW', '--unit', 'brasslight');
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('No profile known here has this code.');
  });
});

describe('build', () => {
  test('content with findings is not built: exit code 1, findings on the error stream', async () => {
    const { code, out, err } = await readback(
      'build',
      '--content',
      broken.folder,
      '--out',
      `${broken.folder}-site`,
      '--json',
    );
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('“origin” cannot be "factori".');
    expect(err).toContain('Nothing was built.');
  });

  test('a folder among the entries, and a configuration that would be published, are refused', async () => {
    const within = await readback(
      'build',
      '--content',
      broken.folder,
      '--out',
      `${broken.folder}/guides/site`,
    );
    expect(within.code).toBe(2);
    expect(within.err).toContain('lies among the entries');
    const published = await readback('build', '--out', '/tmp/site', '--nginx', '/tmp/site/nginx.conf');
    expect(published.code).toBe(2);
    expect(published.err).toContain('would be published with the site');
  });

  test('its result has the published shape', () => {
    const result = { folder: '/site', basePath: '/help/', pages: 3, since: null, headers: {}, redirects: {} };
    expect(buildResultSchema.parse(result)).toBeDefined();
  });
});

describe('the command line itself', () => {
  test('--help tells the commands, the exit codes and examples', async () => {
    const { code, out } = await readback('--help');
    expect(code).toBe(0);
    for (const command of ['check', 'find', 'explain', 'identify', 'sweep', 'build', 'serve', 'dev'])
      expect(out).toContain(`  ${command} `);
    expect(out).toContain('Exit codes: 0 clean or found, 1 findings, not found,');
  });

  test.each([
    [['chek'], /unknown command 'chek'/],
    [['check', '--contents', 'x'], /unknown option '--contents'/],
    [['check', '--format', 'xml'], /Allowed choices are text, json, sarif, github, html/],
    [['explain', '8B0S-I5Z'], /--unit/],
    [['build', '--base', 'help me'], /Give a path such as \/ or \/help\//],
    [['serve', '--port', 'many'], /Give a number from 0 to 65535/],
  ])('%j: exit code 2 and a message', async (argv, message) => {
    const { code, err } = await readback(...argv);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });

  test('runs as npx would run it, as a program of its own', async () => {
    const { stdout } = await promisify(execFile)('node', ['src/cli/readback.ts', 'find', '8B0S-I5Z']);
    expect(stdout).toContain('8B0S-I5Z');
  });
});
