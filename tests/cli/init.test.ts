/** A content repository is begun whole, without fault, and as its own guide says. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, matchesGlob } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { siteSchema } from '../../schemas/index.ts';
import { initResultSchema } from '../../schemas/results/init.ts';
import { fillFolder } from '../../src/cli/commands/whole-folder.ts';
import { follow, stepsOf } from './guide.ts';
import { readback } from './run.ts';

let work: string;
let shop: string;
let content: string;
beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'readback-init-'));
  shop = join(work, 'new/shop');
  content = join(shop, 'content');
  const { code, out, err } = await readback('init', shop);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain(`Began a content repository in ${shop}: `);
});
afterAll(() => rm(work, { recursive: true, force: true }));

async function filesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  return files.map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1)).sort();
}

describe('what is begun', () => {
  test('one of each kind of entry, and nothing the check has to say of them', async () => {
    const files = (await filesIn(content)).map((file) => file.split('/')[0]);
    const counts = Object.fromEntries(
      [...new Set(files)].map((kind) => [kind, files.filter((other) => other === kind).length]),
    );
    expect(counts).toEqual({
      'site.yaml': 1,
      families: 1,
      sequences: 1,
      profiles: 2,
      outputs: 2,
      sources: 2,
      plans: 1,
      tables: 1,
      equipment: 1,
      guides: 1,
    });
    const { code, out } = await readback('check', '--content', content, '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out).findings).toEqual([]);
  });

  test('the workflow is the one of the check, and looks where the entries are', async () => {
    const text = await readFile(join(shop, '.github/workflows/check.yml'), 'utf8');
    expect(text).toBe(await readFile('src/check/workflow/check.yml', 'utf8'));
    expect((parse(text) as { env: object }).env).toEqual({ CONTENT_FOLDER: 'content' });
  });

  test('site.yaml explains every field, and is right with those taken in that are left out', async () => {
    const text = await readFile(join(content, 'site.yaml'), 'utf8');
    const described = (shape: object): [string, string][] =>
      Object.entries(shape).flatMap(([name, field]) => {
        const inner = field.def.type === 'optional' ? field.unwrap() : field;
        return [[name, field.meta().description], ...described(inner.shape ?? {})];
      });
    const fields = described(siteSchema.shape);
    expect(fields.length).toBeGreaterThan(14);
    for (const [name, description] of fields) {
      expect(text).toMatch(new RegExp(`# ${escaped(description)}\\n[# ]*${name}:`));
    }
    // As an editor takes “# ” away again.
    const signs = /^( *)# (?=(?:phone|email|repository|correctAt|languages|licence):)|^# (?= )/gm;
    const all = parse(text.replace(signs, (_, indent) => indent ?? ''));
    const site = siteSchema.parse(all);
    expect(Object.keys(site).sort()).toEqual(Object.keys(siteSchema.shape).sort());
    expect(Object.keys(site.contact).sort()).toEqual(['email', 'hours', 'phone']);
  });

  test('the editor’s settings name, for each YAML entry, the one schema that it keeps to', async () => {
    const settings = JSON.parse(await readFile(join(shop, '.vscode/settings.json'), 'utf8'));
    const wired = Object.entries(settings['yaml.schemas'] as Record<string, string>);
    const entries = (await filesIn(shop)).filter((file) => /^content\/.*\.yaml$/.test(file));
    expect(entries.length).toBeGreaterThan(8);
    for (const entry of entries) {
      const schemas = wired.filter(([, pattern]) => matchesGlob(entry, pattern));
      expect(schemas, entry).toHaveLength(1);
      const ajv = addFormats.default(new Ajv2020({ strict: false }));
      const schema = JSON.parse(await readFile(join(shop, schemas[0]?.[0] ?? ''), 'utf8')) as object;
      const isValid = ajv.compile(schema);
      expect(isValid(parse(await readFile(join(shop, entry), 'utf8'))), entry).toBe(true);
    }
    for (const [path] of wired) {
      expect((await stat(join(shop, path))).isFile()).toBe(true);
    }
  });

  test('git leaves out the program, the site and the reports', async () => {
    execFileSync('git', ['init', '-q', shop]);
    for (const file of ['.readback/a', 'dist/a', '.reports/a']) {
      await mkdir(join(shop, file, '..'), { recursive: true });
      await writeFile(join(shop, file), '');
    }
    const listed = execFileSync('git', ['-C', shop, 'ls-files', '--others', '--exclude-standard', '-z']);
    const paths = listed.toString().split('\0').filter(Boolean).sort();
    for (const folder of ['.readback', 'dist', '.reports', '.git'])
      await rm(join(shop, folder), { recursive: true });
    expect(paths).toEqual(await filesIn(shop));
  });
});

describe('the contributor’s guide', () => {
  test('every command prints what the guide shows, in the order it is followed', async () => {
    const entry = join(content, 'profiles/moorlight/lt-0042.yaml');
    const guide = await readFile(join(shop, 'CONTRIBUTING.md'), 'utf8');
    const edit = async (from: string, to: string) =>
      writeFile(entry, (await readFile(entry, 'utf8')).replace(`origin: ${from}\n`, `origin: ${to}\n`));
    let told = 0;
    for (const { kind, text } of stepsOf(guide, ['yaml', 'console'])) {
      if (kind === 'yaml') {
        const [file, ...lines] = text.split('\n');
        expect(file).toBe('# content/profiles/moorlight/lt-0042.yaml');
        expect(await readFile(entry, 'utf8')).toBe(lines.join('\n'));
        // “Put a mistake in, `origin: factori`”
        await edit('factory', 'factori');
        continue;
      }
      const { shown, printed } = await follow(text, 'npx --prefix .readback readback', content);
      expect(printed).toEqual(shown);
      told += 1;
      // “Put `origin: factory` back, and check again”
      if (printed.join().includes('factori')) await edit('factori', 'factory');
    }
    expect(told).toBe(5);
    await rm(entry);
  });

  test('what it says of renewing schemas finds each of them in the program', async () => {
    const guide = await readFile(join(shop, 'CONTRIBUTING.md'), 'utf8');
    const script = /^for file in .*$/m.exec(guide)?.[0] ?? '';
    await symlink(process.cwd(), join(shop, '.readback'));
    const schema = join(shop, '.vscode/schemas/plan.schema.json');
    const before = await readFile(schema, 'utf8');
    await writeFile(schema, '{}');
    execFileSync('sh', ['-ec', script], { cwd: shop });
    await rm(join(shop, '.readback'));
    expect(await readFile(schema, 'utf8')).toBe(before);
  });
});

describe('whole or not at all', () => {
  test('an empty folder is filled where it is, and --json lists the files', async () => {
    const empty = join(work, 'empty');
    await mkdir(empty);
    const { ino } = await stat(empty);
    const { code, out } = await readback('init', empty, '--json');
    expect(code).toBe(0);
    const result = initResultSchema.parse(JSON.parse(out));
    expect(result).toMatchObject({ folder: empty, content: join(empty, 'content') });
    expect(await filesIn(empty)).toEqual([...result.files].sort());
    expect((await stat(empty)).ino).toBe(ino);
  });

  test('a folder that is not empty is left as it is', async () => {
    const full = join(work, 'full');
    await mkdir(full);
    await writeFile(join(full, 'notes.txt'), 'ours');
    const { code, err } = await readback('init', full);
    expect(code).toBe(2);
    expect(err).toBe(
      `${full} is not empty: it holds notes.txt. Nothing was written.\n→ Name a folder that is not there yet, or an empty one. A repository can be made of it afterwards (git init).`,
    );
    expect(await readdir(full)).toEqual(['notes.txt']);
    const file = await readback('init', join(full, 'notes.txt'));
    expect(file).toMatchObject({ code: 2 });
    expect(file.err).toContain('notes.txt is a file, or lies in one.');
    expect(await readFile(join(full, 'notes.txt'), 'utf8')).toBe('ours');
  });

  test.each(['not there', 'there and empty'])(
    'what fails halfway leaves nothing, the folder being %s',
    async (state) => {
      const folder = join(work, 'half/way');
      if (state !== 'not there') await mkdir(folder, { recursive: true });
      // The second file would have to lie in the first.
      const files = new Map([
        ['a', ''],
        ['a/b', ''],
      ]);
      await expect(fillFolder(folder, files)).rejects.toThrow(
        /cannot be written \(E\w+\)\. Nothing was left/,
      );
      if (state === 'not there') expect(existsSync(join(work, 'half'))).toBe(false);
      else expect(await readdir(folder)).toEqual([]);
    },
  );
});

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
