/** What the check says of prose, beyond the examples of its rules: exact places, and what is left alone. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { findings, pointedAt } from '../prose/example.ts';
import { editedExample } from './example-base.ts';

describe('bare-value', () => {
  test.each([
    ['in emphasis', 'It gives **4.2** *V* here.', ['4.2** *V']],
    ['with a character reference', 'It gives 4.2&nbsp;V here.', ['4.2&nbsp;V']],
    ['with an escape before it', 'A \\* and &amp; then 4.2 V.', ['4.2 V']],
    ['over a line end', 'It gives 4.2\nV here.', ['4.2\nV']],
    ['in a quote, over a line end', '> It gives 4.2\n> V here.', ['4.2\n> V']],
    ['in a list, on its second line', '- One\n  and 300 mV of two.', ['300 mV']],
    ['in a heading', '## What 4 Ω means\n\nText.', ['4 Ω']],
    ['in a link', 'See [the 20 W one](/plans/two-channel/).', ['20 W']],
    ['in a table', '| a | b |\n|---|---|\n| x | 60 Hz |', ['60 Hz']],
    ['in a column headed by a unit', '| Step | Level (V) |\n|---|---|\n| 12 | 1.5 |', ['1.5']],
    ['in a footnote', 'Text.[^1]\n\n[^1]: Of 4 dB.', ['4 dB']],
    ['twice', 'From 63 Hz on 3 dB.', ['63 Hz', '3 dB']],
  ])('%s', async (_, body, expected) => {
    expect(await pointedAt(body)).toEqual(expected);
    expect((await findings(body)).every((one) => one.startsWith('bare-value '))).toBe(true);
  });

  test.each([
    ['code spans and blocks', 'Type `4.2 V`.\n\n    4.2 V\n\n```\n4.2 V\n```'],
    ['addresses', '<https://example.org/4-V-and-5%20>'],
    ['what stands with its source', 'A watt into eight is :cited[2.83 V]{source=maker-bulletin}.'],
    ['values and limits', ':value[moorlight/km-4417 clean-volts], at :limit[clean-distortion].'],
    ['times of day', 'From 9:30 to 12:45, the ratio 2:one.'],
  ])('%s are left alone', async (_, body) => {
    expect(await findings(body)).toEqual([]);
  });

  test('in a folded field, the finding points at the number', async () => {
    const file = 'profiles/fellside/310.yaml';
    const content = editedExample([
      {
        file,
        good: 'about: The only profile it was made with.',
        bad: 'about: >-\n  The only profile\n  it was made with, 3 dB\n  above others.',
      },
    ]);
    const [first, ...more] = (await checkContent(content)).findings;
    expect(more).toEqual([]);
    expect(first?.rule).toBe('bare-value');
    expect(first?.place).toMatchObject({ line: 7, column: 21, endLine: 7, endColumn: 25 });
  });

  test('words of others and of screens are left alone', async () => {
    const content = editedExample([
      {
        file: 'sequences/fellside-touch.yaml',
        good: 'see: The radio plays.',
        bad: 'see: The radio plays and shows 87.5 MHz.',
      },
      {
        file: 'statements/letter-rear.yaml',
        good: 'quote: The rear plays with KM-4417.',
        bad: 'quote: The rear plays with KM-4417, at 3 V.',
      },
    ]);
    expect((await checkContent(content)).findings).toEqual([]);
  });
});

describe('dangling-value', () => {
  test.each([
    [':value[]', 'dangling-value 1:1 This names no profile.'],
    [':value', 'dangling-value 1:1 This names no profile.'],
    [
      ':value[moorlight/km-4417]',
      'dangling-value 1:1 This names the profile “moorlight/km-4417” and none of its values.',
    ],
    [':value[moorlight/km-4418 clean-volts]', 'dangling-link 1:8 There is no profile “moorlight/km-4418”.'],
    [':code[moorlight/km-4418]', 'dangling-link 1:7 There is no profile “moorlight/km-4418”.'],
    [':cited[3 V]{source=nowhere}', 'dangling-link 1:13 There is no source “nowhere”.'],
    [
      ':value[moorlight/km-4417 clean-volts more]',
      'dangling-value 1:38 “more” is one word too many: between the square brackets stand a profile and one value.',
    ],
    [
      ':value[moorlight/km-4417 clean-volts]{stepp=12}',
      'dangling-value 1:39 “stepp” is not an attribute of “value”.',
    ],
    [
      ':value[moorlight/km-4417 clean-volts]{step=twelve}',
      'dangling-value 1:39 “step” must be a number, and this is “twelve”.',
    ],
    [':value[moorlight/km-4417 clean-volts]{step="" }', 'dangling-value 1:39 The attribute “step” is empty.'],
    [':value[moorlight/km-4417 clean-volts]{form=short}', 'dangling-value 1:39 “form” cannot be “short”.'],
    [
      ':value[moorlight/km-4417 source-resistance]',
      'dangling-value 1:26 “source-resistance” is not known for “moorlight/km-4417”: needs readings at one clean step into two loads.',
    ],
    [
      ':value[moorlight/km-4417 clean-volts]{#a .b}',
      'dangling-value 1:1 “id” is not an attribute of “value”.',
    ],
    [
      ':code[moorlight/km-4417 x]',
      'dangling-value 1:25 “x” is one word too many: between the square brackets stands a profile alone.',
    ],
    [':cited[]{source=maker-bulletin}', 'dangling-value 1:1 This cites a source and says nothing.'],
    [':limit[clean]', 'dangling-value 1:1 There is no limit called “clean”.'],
    [
      ':constructor[x]',
      'dangling-value 1:1 There is no directive “constructor”, so this would be left out of the page.',
    ],
    [
      '::value[moorlight/km-4417 clean-volts]',
      'dangling-value 1:1 “value” stands inside a sentence, behind one colon.',
    ],
    [
      ':::note\nText.\n:::',
      'dangling-value 1:1 There is no directive “note”, so this would be left out of the page.',
    ],
  ])('%s', async (body, expected) => {
    expect(await findings(body)).toEqual([expected]);
  });

  test('a value that is missing because its session cannot be read is not named again', async () => {
    const content = editedExample([
      {
        file: 'guides/reading-a-code.md',
        good: 'not a line of the list.',
        bad: 'as :value[moorlight/km-4417 clean-volts] shows.',
      },
      { file: 'outputs/2025-05-shed/session.yaml', good: 'bench: shed\n', bad: '' },
      { file: 'outputs/2026-02-loft/session.yaml', good: 'bench: loft\n', bad: '' },
    ]);
    const { findings: all } = await checkContent(content);
    expect(all.map((one) => one.rule)).not.toContain('dangling-value');
    expect(all.map((one) => one.rule)).toContain('schema');
  });
});

describe('prose-links', () => {
  test.each([
    ['[units](/units/), [one](/units/moorlight/), [its file](../families/moorlight.md)'],
    ['[code](/profiles/moorlight/km-4417/), [readings](/profiles/moorlight/km-4417/readings/)'],
    ['[here](#why)\n\n## Why\n\nText.\n\n### More\n\nText.\n\n## Then\n\nText.'],
    ['[there](/guides/reading-a-code/#what-to-look-at), [there](reading-a-code.md#what-to-look-at)'],
    ['[mail](mailto:a@example.org), [call](tel:+15550142), [page](https://example.org/)'],
    ['[a][b]\n\n[b]: /sources/maker-bulletin/'],
    ['[:code[moorlight/km-4417]](/units/moorlight/)'],
    ['[The screen](https://example.org/a.png) <!-- a note -->'],
  ])('%s is sound', async (body) => {
    expect(await findings(body)).toEqual([]);
  });

  test.each([
    ['[a]()', 'prose-links 1:1 This link leads nowhere: its address is empty.'],
    ['[](/units/)', 'prose-links 1:1 This link has no words to follow.'],
    ['[a](/units/moorlite/)', 'dangling-link 1:5 There is no family “moorlite”.'],
    ['[a](../profiles/fellside/311.yaml)', 'dangling-link 1:5 There is no profile “fellside/311”.'],
    ['[a][b]\n\n[b]: /guides/nowhere/', 'dangling-link 3:6 There is no guide “nowhere”.'],
    ['[a](wiring.txt)', 'prose-links 1:5 There is no page “wiring.txt”.'],
    ['[a](../../secret.md)', 'prose-links 1:5 There is no page “../../secret.md”.'],
    [
      '[a](../sequences/moorlight-menu.yaml)',
      'prose-links 1:5 There is no page “../sequences/moorlight-menu.yaml”.',
    ],
    ['[a](//example.org/)', 'prose-links 1:5 This address is not encrypted.'],
    ['<http://example.org/>', 'prose-links 1:2 This address is not encrypted.'],
    [
      '[a](javascript:alert%281%29)',
      'prose-links 1:5 Links of the kind “javascript:” are left out of the page.',
    ],
    [
      '[a](/guides/reading-a-code/#what)',
      'prose-links 1:5 There is no heading “#what” on the page of “reading-a-code”.',
    ],
    [
      '![a](screen.png)',
      'prose-links 1:1 Images are left out of the page: a content folder holds none, and pages ask no other site for any.',
    ],
    [
      '![a](https://example.org/a.png)',
      'prose-links 1:1 Images are left out of the page: a content folder holds none, and pages ask no other site for any.',
    ],
    ['# Title\n\nText.', 'prose-links 1:1 “Title” is a heading of the first level, which is the title’s.'],
    ['##\n\nText.', 'prose-links 1:1 This heading is empty.'],
    ['### Deep\n\nText.', 'prose-links 1:1 “Deep” is a heading of level 3 below one of level 1.'],
    ['## One\n\nText.\n\n## One\n\nText.', 'prose-links 5:1 A heading “One” stands here already.'],
    ['<b>Loud', 'prose-links 1:1 HTML is left out of the page: <b>'],
  ])('%s is not', async (body, expected) => {
    expect(await findings(body)).toEqual([expected]);
  });
});

test('no body makes a rule crash', async () => {
  const piece = fc.constantFrom(
    ':value[',
    ':cited[',
    ':code[',
    ']',
    '{',
    '}',
    'source=',
    '"',
    'moorlight/km-4417',
    ' clean-volts',
    '# ',
    '\n',
    '[a](',
    ')',
    '#',
    '![',
    '<b>',
    '&nbsp;',
    '&#x41;',
    '\\',
    '4 V',
    '|',
    '\n|---|\n',
    '> ',
    ':::',
    '::x',
    '\t',
    '😀',
    '[^1]',
    '[^1]: ',
  );
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.oneof(piece, fc.string({ maxLength: 6 })), { maxLength: 30 }),
      async (pieces) => {
        await findings(pieces.join(''));
      },
    ),
    { numRuns: 60 },
  );
});
