import { expect, test } from 'vitest';
import { TextFile } from '../../src/base/index.ts';
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
