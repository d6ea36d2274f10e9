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
  const [filling = '', ...rest] = replaced.split('\n');
  expect(filling).toMatch(/^import \{ fillSlots \} from '.*\/words\/fill\.ts';$/);
  expect(rest.join('\n')).toBe(
    source
      // A text with slots is filled, without being looked up.
      .replace("phrase('step {step}'", 'fillSlots("paso \\"{step}\\""')
      .replace('"{count} readings"', '{"one":"{count} lectura","other":"{count} lecturas"}')
      // A text without slots needs no call.
      .replace(/phrase\(\s*'a rider.*'\s*\)/, '"a rider\'s ’dB\u00a0plan"'),
  );
});

test('calls within the arguments of others are replaced too', () => {
  const nested = "countPhrase(of(phrase('a')), 'one {b}', 'many {b}', { b: phrase('a') })";
  expect(replacePhrases(nested, { a: 'ä', 'many {b}': { one: 'ein {b}', other: 'viele {b}' } })).toBe(
    'countPhrase(of("ä"), \'one {b}\', {"one":"ein {b}","other":"viele {b}"}, { b: "ä" })',
  );
});
