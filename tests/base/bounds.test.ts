/** Entries that no reader would get through in time are refused by their size and depth alone. */
import { describe, expect, test } from 'vitest';
import { beyondBounds } from '../../src/base/bounds.ts';
import { TextFile } from '../../src/base/index.ts';

function refused(text: string, isMarkdown: boolean): string | undefined {
  const finding = beyondBounds(new TextFile('entry', text), isMarkdown);
  return finding && `${finding.place.line}:${finding.place.column} ${finding.message}`;
}

const fields = (count: number) => Array.from({ length: count }, (_, at) => `field${at}: 1\n`).join('');

describe('refused', () => {
  test.each([
    ['lists in lists', `a:\n  ${'- '.repeat(30)}x\n`, false, '2:1 30 lists or quotations begin'],
    [
      'quotations in quotations',
      `---\na: 1\n---\n\n${'>'.repeat(40)}\n`,
      true,
      '5:1 30 lists or quotations begin',
    ],
    ['numbered lists', `---\na: 1\n---\n\n${'1. '.repeat(5000)}\n`, true, '5:1 30 lists or quotations begin'],
    ['fields', fields(4001), false, '4001:1 This entry has more than 4000 fields.'],
    [
      'fields on one line',
      `{ ${'a: 1, '.repeat(4001)} }`,
      false,
      '1:1 This entry has more than 4000 fields.',
    ],
    [
      'a paragraph',
      `---\na: 1\n---\n\n${'words\n'.repeat(900)}`,
      true,
      '838:1 More than 5000 characters stand here without an empty line.',
    ],
    ['a text', 'words\n\n'.repeat(9363), true, '1:1 This text has 65541 characters; the most is 65536.'],
  ])('%s', (_, text, isMarkdown, message) => {
    expect(refused(text, isMarkdown)).toMatch(new RegExp(`^${message.replaceAll('.', '\\.')}`));
  });
});

describe('let through', () => {
  test.each([
    ['lists in lists', `a:\n  ${'- '.repeat(29)}x\n`, false],
    ['a rule of hyphens', `---\na: 1\n---\n\n${'-'.repeat(80)}\n\n${'* '.repeat(10)}\n`, true],
    ['fields', fields(4000), false],
    ['long front matter', `---\n${fields(900)}---\n\nText.\n`, true],
    ['a long line of an entry', `about: ${'words '.repeat(5000)}\n`, false],
    ['paragraphs', 'words\n\n'.repeat(9000), true],
  ])('%s', (_, text, isMarkdown) => {
    expect(refused(text, isMarkdown)).toBeUndefined();
  });
});
