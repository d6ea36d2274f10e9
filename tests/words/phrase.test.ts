import { expect, test } from 'vitest';
import { countPhrase, inLanguage, type Language, phrase } from '../../src/words/index.ts';

const polish: Language = {
  tag: 'pl',
  name: 'Polski',
  texts: {
    en: 'pl',
    'step {step}': 'stopień {step}',
    '{count} readings': { one: '{count} odczyt', few: '{count} odczyty', other: '{count} odczytów' },
  },
};

test('a text is said in English, its slots filled, where no language is set', () => {
  expect(phrase('step {step}', { step: 12 })).toBe('step 12');
  expect(countPhrase(1, '{count} reading', '{count} readings')).toBe('1 reading');
  expect(countPhrase(0, '{count} reading', '{count} readings')).toBe('0 readings');
});

// Plural categories of Polish: Unicode CLDR, language plural rules (one: 1; few: 2–4, 22–24 …; many: the others).
test.each([
  [1, '1 odczyt'],
  [2, '2 odczyty'],
  [5, '5 odczytów'],
  [12, '12 odczytów'],
  [22, '22 odczyty'],
])('%i is counted by the plural rules of the language', async (count, said) => {
  expect(await inLanguage(polish, () => countPhrase(count, '{count} reading', '{count} readings'))).toBe(
    said,
  );
});

test('a text that is missing stays English, and the language ends with what was run in it', async () => {
  expect(await inLanguage(polish, () => phrase('channel {name}', { name: 'FL' }))).toBe('channel FL');
  await expect(
    inLanguage(polish, () => {
      throw new Error('no');
    }),
  ).rejects.toThrow('no');
  expect(phrase('step {step}', { step: 1 })).toBe('step 1');
});
