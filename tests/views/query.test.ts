import { expect, test } from 'vitest';
import { codesWithin, looksLikeWords, speaksOf, wordsOf } from '../../src/client/query.ts';
import { verdictWords } from '../../src/client/verdict-words.ts';
import { buildCodeIndex, findCode } from '../../src/codes/index.ts';
import { demoAnswers } from './sample.ts';

test('words are told from codes', () => {
  for (const words of ['weak bass', 'rear silent', 'bridged', 'no sound at rear'])
    expect(looksLikeWords(words)).toBe(true);
  for (const code of ['8B0S-I5Z', '8b0s i5z', '1.10', '0x7E8', 'S5B8OG', 'I1L0', 'GI', ''])
    expect(looksLikeWords(code)).toBe(false);
});

test('no code of the demo is taken for words', async () => {
  const { base } = await demoAnswers();
  for (const { data } of base.profiles.values()) {
    for (const spelling of [data.code, ...data.otherSpellings]) {
      expect(looksLikeWords(spelling), spelling).toBe(false);
      expect(looksLikeWords(spelling.toLowerCase()), spelling).toBe(false);
    }
  }
});

test('a page speaks of a word in any of its forms, and not of another with the same first letter', () => {
  expect(speaksOf('How we measure', 'measuring')).toBe(true);
  expect(speaksOf('It clips at step 24', 'clipped')).toBe(true);
  expect(speaksOf('Zeros and ones', 'zeppelin')).toBe(false);
  expect(speaksOf('Anything', '…')).toBe(false);
});

test('above the results stands what to do with them', () => {
  const index = buildCodeIndex([
    { code: 'G60D-2ZS', family: 'a', profile: 'a/1', otherSpellings: [] },
    { code: '2Z6G-0O8', family: 'a', profile: 'a/2', otherSpellings: [] },
  ]);
  expect(verdictWords(findCode(index, 'g60d2zs'))).toBe('This is G60D-2ZS.');
  const misread = findCode(index, 'G6OD-2ZS');
  expect(misread.candidates[0]?.code).toBe('G60D-2ZS');
  expect(verdictWords(misread)).toMatch(/Compare it with your screen|again: is it/);
  expect(verdictWords(findCode(index, 'QQ99-77W'))).toMatch(/Read it once more/);
});

test.each([
  ['hello, my code is G60D-2ZS thanks', ['G60D-2ZS thanks', 'is G60D-2ZS', 'G60D-2ZS']],
  ['G60D-2ZS', []],
  ['weak bass', []],
  ['code: 8B0S I5Z', ['code 8B0S', '8B0S I5Z', '8B0S', 'I5Z']],
])('the codes a text may hold: %s', (text, expected) => expect(codesWithin(text)).toEqual(expected));

test('the words of a question, the longest first', () => {
  expect(wordsOf('no weak bass at rear speakers')).toEqual(['speakers', 'weak', 'bass']);
  expect(wordsOf('bass')).toEqual([]);
});
