/** The workflow for content repositories: well-formed, and its check step run as a shell would run it there. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { parse } from 'yaml';

interface Workflow {
  on: Record<string, unknown>;
  env: Record<string, string>;
  permissions: Record<string, string>;
  jobs: Record<
    string,
    { steps: { name?: string; uses?: string; run?: string; with?: Record<string, unknown> }[] }
  >;
}

const workflow = parse(readFileSync('src/check/workflow/check.yml', 'utf8')) as Workflow;
const steps = workflow.jobs.check?.steps ?? [];
const project = fileURLToPath(new URL('../../', import.meta.url));
const root = mkdtempSync(join(tmpdir(), 'readback-workflow-'));

/** A content repository with the generator beside it, as the steps before the check leave it. */
beforeAll(() => {
  cpSync('src/check/example-base', join(root, 'content'), { recursive: true });
  mkdirSync(join(root, '.readback'));
  for (const part of ['src', 'schemas', 'node_modules', 'package.json'])
    symlinkSync(join(project, part), join(root, '.readback', part));
  git('init', '-q', '-b', 'main');
  git('add', 'content');
  git('commit', '-q', '-m', 'Content');
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function git(...args: string[]): string {
  return execFileSync(
    'git',
    ['-C', root, '-c', 'user.name=Test', '-c', 'user.email=test@sample.example', ...args],
    { encoding: 'utf8', env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null' } },
  ).trim();
}

/** GitHub runs a step's script with `bash -e`. */
function runCheck(base: string) {
  const script = steps.find(({ name }) => name === 'Check')?.run ?? '';
  expect(script).toContain('readback.ts check');
  return spawnSync('bash', ['-e', '-c', script], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...workflow.env, BASE: base },
  });
}

test('it checks out the whole history, and the generator from where the shop says', () => {
  const checkouts = steps.filter(({ uses }) => uses?.startsWith('actions/checkout@'));
  expect(checkouts[0]?.with?.['fetch-depth']).toBe(0);
  expect(checkouts[1]?.with?.repository).toContain('vars.READBACK_REPOSITORY');
  expect(Object.keys(workflow.on)).toEqual(['pull_request', 'push', 'schedule']);
  expect(workflow.permissions).toEqual({ contents: 'read', 'security-events': 'write' });
  expect(steps.some(({ uses }) => uses?.startsWith('github/codeql-action/upload-sarif@'))).toBe(true);
});

test('a push: everything is checked, and both reports are written', () => {
  const { status, stdout, stderr } = runCheck('');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toBe('No contradictions, nothing unsourced.\n');
  expect(existsSync(join(root, '.reports/check.html'))).toBe(true);
});

test('a pull request: what it brings in, beside the lines, with paths from the root of the repository', () => {
  const base = git('rev-parse', 'HEAD');
  const letter = join(root, 'content/statements/letter-rear.yaml');
  writeFileSync(letter, readFileSync(letter, 'utf8').replace('source: rider-letter', 'source: riders-leter'));
  git('commit', '-q', '-a', '-m', 'A slip');
  const { status, stdout } = runCheck(base);
  expect(status).toBe(1);
  expect(stdout).toContain(
    '::error file=content/statements/letter-rear.yaml,line=1,endLine=1,col=9,endColumn=21,title=dangling-link::There is no source “riders-leter”.',
  );
  const log = JSON.parse(readFileSync(join(root, '.reports/check.sarif'), 'utf8')) as {
    runs: { results: { locations: { physicalLocation: { artifactLocation: { uri: string } } }[] }[] }[];
  };
  expect(log.runs[0]?.results[0]?.locations[0]?.physicalLocation.artifactLocation.uri).toBe(
    'content/statements/letter-rear.yaml',
  );
  const after = runCheck(git('rev-parse', 'HEAD'));
  expect(after.status).toBe(0);
  expect(after.stdout).toMatch(/^Nothing new .* 1 older finding left out\.\n$/);
});
