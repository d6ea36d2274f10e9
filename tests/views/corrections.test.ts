/** “Suggest a correction” leads, from every page of an entry, to a file that is there and a line it has. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { siteSchema } from '../../schemas/index.ts';
import { readAnswers } from '../../src/answers.ts';
import { correctionAddress, correctionViews } from '../../src/views/corrections.ts';
import { editedExample, exampleFiles } from '../check/example-base.ts';
import { demoAnswers, entryPages } from './sample.ts';

const answers = await demoAnswers();
const views = [...correctionViews(answers).values()];

test('each page of an entry has one, and no other page', async () => {
  const pages = (await entryPages(answers)).map(({ path }) => path);
  expect(pages.length).toBeGreaterThan(60);
  expect(views.map(({ id }) => id).sort()).toEqual(pages.sort());
  for (const { id, links } of views) expect(links.length, id).toBeGreaterThan(0);
});

test('every link names a file of the content folder and a line of it, by the pattern of site.yaml', () => {
  for (const { id, links } of views) {
    for (const { file, line, address } of links) {
      expect(address).toBe(`https://git.quillhaven.example/help/edit/main/content/${file}#L${line}`);
      const path = join('content', file);
      expect(existsSync(path), `${id}: ${file}`).toBe(true);
      expect(readFileSync(path, 'utf8').split('\n').length, `${id}: ${file}`).toBeGreaterThanOrEqual(line);
    }
  }
});

describe('the line', () => {
  const lineOf = ({ file, line }: { file: string; line: number }): string =>
    readFileSync(join('content', file), 'utf8').split('\n')[line - 1] ?? '';
  const all = views.flatMap(({ id, links }) => links.map((link) => ({ id, ...link })));

  test('of readings is the first row of the profile in the sheet', () => {
    const sheets = all.filter(({ file }) => file.endsWith('.csv'));
    expect(sheets.length).toBeGreaterThan(20);
    for (const link of sheets) {
      const profile = /^profiles\/(.+)\/readings\/$/.exec(link.id)?.[1] ?? '';
      const rows = readFileSync(join('content', link.file), 'utf8').split('\n');
      expect(link.line).toBe(rows.findIndex((row) => row.startsWith(`${profile},`)) + 1);
    }
  });

  test('of a statement is that of its words, or of what it claims of the profile', () => {
    const statements = all.filter(({ file }) => file.startsWith('statements/'));
    expect(statements.length).toBeGreaterThan(5);
    for (const link of statements) {
      const text = lineOf(link);
      if (link.id.startsWith('sources/')) expect(text).toMatch(/^quote:/);
      else expect(text).toContain(link.id.slice('profiles/'.length, -1));
    }
  });

  test('of the text about a unit is where that begins', () => {
    const texts = all.filter(({ what }) => what === 'the text about it');
    expect(texts.length).toBeGreaterThan(2);
    for (const { file, line } of texts) {
      const above = readFileSync(join('content', file), 'utf8')
        .split('\n')
        .slice(0, line - 1);
      expect(above.filter((one) => one === '---')).toHaveLength(2);
      expect(lineOf({ file, line })).not.toBe('');
    }
  });
});

describe('without a pattern', () => {
  const place = { file: 'families/moorlight.md', line: 7 };
  const contact = { email: 'bench@shop.example' };

  test('the repository, else a mail that names file and line, else nothing', () => {
    const repository = 'https://git.example/help';
    expect(correctionAddress({ repository, contact }, place)).toBe(repository);
    const mail = correctionAddress({ contact }, place) ?? '';
    expect(decodeURIComponent(mail)).toBe(
      'mailto:bench@shop.example?subject=Correction: families/moorlight.md, line 7',
    );
    expect(new URL(mail).searchParams.get('subject')).toBe('Correction: families/moorlight.md, line 7');
    expect(correctionAddress({ contact: {} }, place)).toBeUndefined();
  });

  test('file names that mean something in an address are only names', () => {
    const correctAt = 'https://git.example/{file}?line={line}&of={file}';
    const odd = { file: 'guides/a b#c?d%e&{line}$&.md', line: 3 };
    const url = new URL(correctionAddress({ correctAt, contact }, odd) ?? '');
    expect(decodeURIComponent(url.pathname)).toBe(`/${odd.file}`);
    expect(url.searchParams.get('line')).toBe('3');
    expect(url.hash).toBe('');
  });
});

describe('the pattern', () => {
  const field = siteSchema.shape.correctAt;
  test.each([
    'https://git.example/help/edit/main/content/{file}#L{line}',
    'https://git.example/help/blob/main/{file}?plain=1#L{line}',
    'https://forms.example/correct?file={file}&line={line}',
    'https://git.example/{file}',
  ])('may be %s', (text) => {
    expect(field.safeParse(text).success).toBe(true);
  });

  test.each([
    ['http://git.example/{file}', 'another scheme'],
    ['javascript:alert(1)//{file}', 'a script'],
    ['https://git.example/help', 'no {file}'],
    ['https://git.example/{line}', 'no {file}'],
    ['https://{file}.example/', 'a host that varies'],
    ['https://git.example/{file}/{branch}', 'a brace that means nothing'],
    ['https://git.example/a b/{file}', 'a space'],
    ['https://git.exa[mple/{file}', 'no address'],
    ['https://git.example\\@elsewhere.example/{file}', 'another host in disguise'],
  ])('may not be %s: %s', (text) => {
    expect(field.safeParse(text).success).toBe(false);
  });

  test('a wrong one is told at its place, with what to write', async () => {
    const good = exampleFiles.get('site.yaml') ?? '';
    const bad = `${good.trimEnd()}\ncorrectAt: https://git.example/help\n`;
    const { findings } = await readAnswers(editedExample([{ file: 'site.yaml', good, bad }]));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      rule: 'schema',
      place: { file: 'site.yaml', line: bad.split('\n').length - 1 },
      message: '“correctAt” cannot be "https://git.example/help".',
    });
    expect(findings[0]?.help).toMatch(/^Begin with https:\/\/, and write \{file\} where/);
  });
});
