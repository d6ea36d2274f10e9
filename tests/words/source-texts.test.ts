import { expect, test } from 'vitest';
import { replacePhrases, textsOf } from '../../src/words/source-texts.ts';

const source = `
/** Says phrase('in a comment'). */
const a = phrase('step {step}', { step });
const b = countPhrase(found.filter((one) => one.ok).length, '{count} reading', "{count} readings"); // phrase(dynamic)
const c = \`\${phrase(
  'a rider\\'s \\u2019dB\\u{a0}plan'
)}\`;
const d = other.phrase(dynamic) + rephrase(dynamic);
`;

test('texts are found where they stand, comments aside', () => {
  expect(textsOf(source).map(({ text, one }) => [text, one])).toEqual([
    ['step {step}', undefined],
    ['{count} readings', '{count} reading'],
    ["a rider's ’dB\u00a0plan", undefined],
  ]);
});

test('an escape ends after its digits, though a letter of the text could be one more', () => {
  expect(textsOf("countPhrase(n, '{count}\\u00a0answer', '{count}\\u{a0}answers')")).toMatchObject([
    { one: '{count}\u00a0answer', text: '{count}\u00a0answers' },
  ]);
});

test('a text that is not written out is refused with its line', () => {
  expect(() => textsOf('\n\nphrase(`step`)')).toThrow('line 3');
  expect(() => textsOf('countPhrase(n, one, other)')).toThrow('line 1');
});

test('the texts of another language come in place of the English ones, and nothing else changes', () => {
  const replaced = replacePhrases(source, {
    'step {step}': 'paso "{step}"',
    '{count} readings': { one: '{count} lectura', other: '{count} lecturas' },
  });
  expect(replaced).toBe(
    source
      .replace("'step {step}'", '"paso \\"{step}\\""')
      .replace('"{count} readings"', '{"one":"{count} lectura","other":"{count} lecturas"}'),
  );
});
