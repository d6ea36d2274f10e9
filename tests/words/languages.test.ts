/** Every shipped language says every text of the interface. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { textsJson } from '../../src/publish/write-texts.ts';
import { textFaults } from '../../src/words/faults.ts';
import { interfaceTexts, shippedLanguages } from '../../src/words/shipped.ts';

test('the list of texts is that of the source: `npm run words` writes it', () => {
  expect(readFileSync(new URL('../../src/words/texts.json', import.meta.url), 'utf8')).toBe(textsJson());
});

test.each(shippedLanguages.filter(({ tag }) => tag !== 'en'))(
  '$name says every text, with its slots, marks and forms, and no other',
  ({ tag, texts }) => {
    expect(textFaults(interfaceTexts, texts, tag)).toEqual([]);
  },
);

test('what is wrong with a text is told by kind', () => {
  const said = new Map([
    ['step {step}', false],
    ['See <link>all</link>.', false],
    ['{count} readings', true],
    ['Back', false],
  ]);
  const texts = {
    'step {step}': 'paso {paso}',
    'See <link>all</link>.': 'Ver todo.',
    '{count} readings': '{count} lecturas',
    Bakc: 'Atrás',
  };
  expect(textFaults(said, texts, 'es').map(({ kind, text }) => [kind, text])).toEqual([
    ['slots', 'step {step}'],
    ['marks', 'See <link>all</link>.'],
    ['forms', '{count} readings'],
    ['missing', 'Back'],
    ['unknown', 'Bakc'],
  ]);
});
