/** `readback check`: reports into files, and the rules explained. */
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkResultSchema } from '../../schemas/results/check.ts';
import { rulesResultSchema } from '../../schemas/results/rules.ts';
import { rules } from '../../src/check/index.ts';
import { ContentCopy } from '../content-copy.ts';
import { readback } from './run.ts';

let broken: ContentCopy;
let folder: string;
beforeAll(async () => {
  broken = await ContentCopy.make();
  await broken.edit('profiles/brasslight/8b0s-i5z.yaml', 'origin: factory', 'origin: factori');
  folder = await mkdtemp(join(tmpdir(), 'readback-reports-'));
});
afterAll(async () => {
  await broken.remove();
  await rm(folder, { recursive: true });
});

describe('--out', () => {
  test('writes reports beside what is printed, in the form their names ask for', async () => {
    const out = (name: string) => ['--out', join(folder, 'deep/er', name)];
    const files = ['a.sarif', 'a.json', 'a.html', 'a.txt'];
    const run = await readback(
      'check',
      '--content',
      broken.folder,
      '--format',
      'github',
      ...files.flatMap(out),
    );
    expect(run.code).toBe(1);
    expect(run.err).toBe('');
    expect(run.out).toMatch(/^::error file=.*8b0s-i5z\.yaml,line=6,/);
    expect((await readdir(join(folder, 'deep/er'))).sort()).toEqual([...files].sort());
    const text = async (name: string) => await readFile(join(folder, 'deep/er', name), 'utf8');
    expect(checkResultSchema.parse(JSON.parse(await text('a.json'))).counts.error).toBe(1);
    expect(JSON.parse(await text('a.sarif'))).toMatchObject({ version: '2.1.0' });
    expect(await text('a.html')).toMatch(/^<!doctype html>/);
    expect(await text('a.txt')).toContain('\n1 error in 1 file.\n');
  });

  test('an older report is replaced; a clean check writes one too', async () => {
    const file = join(folder, 'again.json');
    await readback('check', '--content', broken.folder, '--out', file);
    expect((await readback('check', '--out', file)).code).toBe(0);
    expect(checkResultSchema.parse(JSON.parse(await readFile(file, 'utf8'))).findings).toEqual([]);
  });

  test('a name that says no form, or a place that cannot be written to: exit code 2', async () => {
    const unknown = await readback('check', '--content', broken.folder, '--out', join(folder, 'report.xml'));
    expect(unknown).toMatchObject({ code: 2, out: '' });
    expect(unknown.err).toContain('Give one of: .txt, .json, .sarif, .html.');
    const nowhere = await readback('check', '--content', broken.folder, '--out', '/dev/null/x.json');
    expect(nowhere).toMatchObject({ code: 2, out: '' });
    expect(nowhere.err).toContain('/dev/null/x.json cannot be written (EEXIST).');
  });
});

describe('--explain and --rules', () => {
  test('every rule is explained with its examples, without any content', async () => {
    for (const rule of rules) {
      const { code, out } = await readback('check', '--content', 'no/such/folder', '--explain', rule.id);
      expect(code).toBe(0);
      const lines = out.split('\n');
      expect(lines[0]).toBe(`${rule.id}  ${rule.severity}`);
      expect(out.replaceAll('\n', ' ')).toContain(rule.explanation);
      for (const { title, file, bad, good } of rule.examples) {
        expect(out).toContain(`Example: ${title}`);
        expect(out).toContain(`  ${file}\n`);
        for (const text of [bad, good]) {
          for (const line of text.split('\n')) expect(out).toContain(line.replaceAll('\t', '⇥'));
        }
      }
    }
  });

  test('laid out for a terminal', async () => {
    expect((await readback('check', '--explain', 'unknown-key')).out).toMatchInlineSnapshot(`
      "unknown-key  error
      No entry has a field, and no sheet a column, that its kind does not know.

      A misspelt field would be passed over in silence and its value lost. The nearest
      known name is offered where there is one.

      Example: a misspelt field
        profiles/moorlight/km-4417.yaml
        wrong │ orign: factory
        right │ origin: factory

      Example: a field in another unit
        statements/bulletin-loud-profile.yaml
        wrong │ valueMillivolts: 6300
        right │ valueVolts: 6.3"
    `);
  });

  test('an unknown rule: exit code 2 and the nearest', async () => {
    expect(await readback('check', '--explain', 'dangling-links')).toEqual({
      code: 2,
      out: '',
      err: 'There is no rule “dangling-links”.\n→ Did you mean --explain dangling-link?',
    });
    expect((await readback('check', '--explain', 'weather')).err).toContain(
      'readback check --rules lists them all.',
    );
  });

  test('the list has every rule on a line', async () => {
    const { code, out } = await readback('check', '--content', 'no/such/folder', '--rules');
    expect(code).toBe(0);
    expect(out.split('\n').map((line) => line.split(' ')[0])).toEqual(rules.map(({ id }) => id));
  });

  test('as JSON, of the published shape', async () => {
    const all = rulesResultSchema.parse(JSON.parse((await readback('check', '--rules', '--json')).out));
    expect(all.rules.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    const one = rulesResultSchema.parse(
      JSON.parse((await readback('check', '--explain', 'schema', '--json')).out),
    );
    expect(one.rules).toEqual(all.rules.filter(({ id }) => id === 'schema'));
  });
});
