import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { papers } from '../../src/views/papers.ts';
import { shortName } from '../../src/views/short-name.ts';

test('a short name is as many whole words as fit beneath an icon', () => {
  expect(shortName('Quillhaven Audio Works')).toBe('Quillhaven');
  expect(shortName('Pier Audio Works')).toBe('Pier Audio');
  expect(shortName('Extraordinarily Long')).toBe('Extraordinarily');
  expect(shortName('Ty')).toBe('Ty');
});

test('the browser’s bars have the paper of the pages', () => {
  const tokens = readFileSync('src/styles/tokens.css', 'utf8');
  // Those of print and of more contrast come after them.
  const found = [...tokens.matchAll(/--paper: (#\w+);/g)].map((match) => match[1]);
  expect(found.slice(0, 2)).toEqual([papers.light, papers.dark]);
});
