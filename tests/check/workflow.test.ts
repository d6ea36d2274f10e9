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
import { impactMarker } from '../../src/views/impact/markdown.ts';

interface Workflow {
  on: Record<string, unknown>;
  env: Record<string, string>;
  permissions: Record<string, string>;
  jobs: Record<
    string,
    {
      if?: string;
      permissions?: Record<string, string>;
      steps: {
        name?: string;
        if?: string;
        uses?: string;
        run?: string;
        env?: Record<string, string>;
        with?: Record<string, unknown>;
      }[];
    }
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
function runStep(job: string, step: string, env: Record<string, string>) {
  const script = workflow.jobs[job]?.steps.find(({ name }) => name === step)?.run;
  if (script === undefined) throw new Error(`no step “${step}”`);
  return spawnSync('bash', ['-e', '-c', script], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...workflow.env, ...env },
  });
}

function runCheck(base: string) {
  return runStep('check', 'Check', { BASE: base });
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

/** A `gh` that knows the comments of a request, keeps those it is given, and writes down what it was asked. */
const fakeGh = `#!/usr/bin/env node
const { readFileSync, writeFileSync, appendFileSync } = require('node:fs');
const args = process.argv.slice(2);
appendFileSync('gh.log', JSON.stringify(args) + '\\n');
const comments = JSON.parse(readFileSync('comments.json', 'utf8'));
const body = args.find((one) => one.startsWith('body=@'));
if (body === undefined) {
  // What the step asks jq for, said in this language.
  const marker = /startswith\\("([^"]+)"\\)/.exec(args[args.indexOf('--jq') + 1])[1];
  const own = comments.filter((one) => one.login === 'github-actions[bot]' && one.body.startsWith(marker));
  console.log(own.map((one) => one.id).join('\\n'));
} else {
  const text = readFileSync(body.slice(6), 'utf8');
  const id = Number(/comments\\/(\\d+)$/.exec(args.find((one) => one.startsWith('repos/')))?.[1]);
  const known = comments.find((one) => one.id === id);
  if (known) known.body = text;
  else comments.push({ id: 99, login: 'github-actions[bot]', body: text });
  writeFileSync('comments.json', JSON.stringify(comments));
}
`;

test('what a request does to the answers: in the summary, then in one comment that is kept up to date', () => {
  const base = git('rev-parse', 'HEAD');
  const plan = join(root, 'content/plans/two-channel.yaml');
  writeFileSync(plan, readFileSync(plan, 'utf8').replace('leastVolts: 1,', 'leastVolts: 4,'));
  git('commit', '-q', '-a', '-m', 'A plan asks for more');
  writeFileSync(join(root, 'gh'), fakeGh, { mode: 0o755 });
  const somebody = { id: 7, login: 'somebody', body: `${impactMarker}\nNot ours.` };
  writeFileSync(join(root, 'comments.json'), JSON.stringify([somebody]));
  const files = { GITHUB_STEP_SUMMARY: join(root, 'summary.md'), GITHUB_OUTPUT: join(root, 'output.txt') };
  for (const file of Object.values(files)) writeFileSync(file, '');

  const told = runStep('check', 'Say what it does to the answers', { BASE: base, ...files });
  expect({ status: told.status, stderr: told.stderr }).toEqual({ status: 0, stderr: '' });
  const report = readFileSync(join(root, '.reports/impact.md'), 'utf8');
  expect(report).toContain('Two-channel amplifier: Keep → Reflash');
  expect(readFileSync(files.GITHUB_STEP_SUMMARY, 'utf8')).toBe(report);
  expect(readFileSync(files.GITHUB_OUTPUT, 'utf8')).toBe('told=yes\n');

  const env = {
    PATH: `${root}:${process.env.PATH}`,
    COMMENTS: 'repos/o/r/issues/1/comments',
    COMMENT: 'repos/o/r/issues/comments',
  };
  for (let time = 1; time <= 2; time += 1) {
    const { status, stderr } = runStep('comment', 'Keep the comment up to date', env);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  }
  expect(JSON.parse(readFileSync(join(root, 'comments.json'), 'utf8'))).toEqual([
    somebody,
    { id: 99, login: 'github-actions[bot]', body: report },
  ]);
  const asked = readFileSync(join(root, 'gh.log'), 'utf8');
  expect(asked.match(/"--method","\w+"/g)).toEqual(['"--method","POST"', '"--method","PATCH"']);
});

test('only the job that comments may write comments, and it handles nothing of the request but the report', () => {
  const { comment, check } = workflow.jobs;
  expect(comment?.permissions).toEqual({ 'pull-requests': 'write' });
  expect(check?.permissions).toBeUndefined();
  expect(comment?.if).toContain('github.event.pull_request.head.repo.full_name == github.repository');
  expect(comment?.steps.map(({ uses }) => uses)).toEqual(['actions/download-artifact@v4', undefined]);
  // Nothing a contributor can name is put into a script by the runner.
  for (const step of Object.values(workflow.jobs).flatMap((job) => job.steps)) {
    expect(step.run ?? '').not.toContain('${{');
    expect(JSON.stringify(step.env ?? {})).not.toMatch(/secrets\.|title|body|head\.ref|head_ref/);
  }
});
