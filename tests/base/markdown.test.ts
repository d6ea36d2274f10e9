import { expect, test } from 'vitest';
import { plainText, TextFile } from '../../src/base/index.ts';
import { readMarkdown } from '../../src/base/markdown.ts';

function read(text: string) {
  return readMarkdown(new TextFile('guide.md', text));
}

test('front matter is data with places counted from the top of the file; the body is a tree', () => {
  const { data, positions, body } = read('---\ntitle: Reading\norder: 3\n---\n\n# One\n\nText.\n');
  expect(data).toEqual({ title: 'Reading', order: 3 });
  expect(positions.place(['order'])).toMatchObject({ line: 3, column: 8 });
  expect(body.children.map((node) => [node.type, node.position?.start.line])).toEqual([
    ['heading', 6],
    ['paragraph', 8],
  ]);
});

test('the same with CRLF line ends', () => {
  const { data, positions } = read('---\r\ntitle: Reading\r\norder: 3\r\n---\r\n\r\nText.\r\n');
  expect(data).toEqual({ title: 'Reading', order: 3 });
  expect(positions.place(['order'])).toMatchObject({ line: 3, column: 8, endColumn: 9 });
});

test('an error in the front matter is placed in the file', () => {
  const { findings } = read('---\ntitle: Reading\ntitle: Again\n---\n');
  expect(findings).toMatchObject([{ rule: 'syntax', place: { line: 3, column: 1 } }]);
});

test('without front matter a finding says how it begins', () => {
  expect(read('# Title\n').findings).toMatchObject([
    { rule: 'syntax', place: { line: 1, column: 1 }, message: 'This entry has no front matter.' },
  ]);
});

test('empty front matter is no data, and no crash', () => {
  expect(read('---\n---\n').data).toBeNull();
});

test('nesting beyond all reason is a finding, and no crash', () => {
  for (const sign of ['> ', '*a ', '- ', '[']) {
    const { findings } = read(`---\nx: 1\n---\n${sign.repeat(3000)}`);
    expect(findings.length, sign).toBeLessThanOrEqual(1);
  }
  expect(read(`---\nx: 1\n---\n${'> '.repeat(100_000)}a`).findings).toMatchObject([
    { rule: 'syntax', place: { line: 4 } },
  ]);
  expect(read(`---\nx: 1\n---\n${'> '.repeat(50)}a`).findings).toEqual([]);
});

test('colons that belong to the text stay in it', () => {
  const { body } = read('---\nx: 1\n---\nFrom 9:30, note:see :value[a/b c].\n');
  const [paragraph] = body.children;
  const kinds = paragraph?.type === 'paragraph' ? paragraph.children.map((node) => node.type) : [];
  expect(kinds.filter((kind) => kind !== 'text')).toEqual(['textDirective']);
  expect(paragraph && plainText(paragraph)).toBe('From 9:30, note:see a/b c.');
});
