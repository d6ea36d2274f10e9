/** The rules on codes and fitment beyond their examples: what they must not say, and how they scale. */
import { describe, expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { editedExample, exampleFiles, type TextEdit } from './example-base.ts';

const newer = 'profiles/moorlight/rt-5561.yaml';
const family = 'families/moorlight.md';
const older = 'families/fellside.md';
const anyCode: TextEdit = {
  file: family,
  good: "pattern: '^[A-Z]{2}-[0-9]{4}$'",
  bad: "pattern: '^[A-Z0-9]{2}-[0-9A-Z]{4}$'",
};

async function said(edits: readonly TextEdit[]): Promise<string[]> {
  const { findings } = await checkContent(editedExample(edits));
  return findings.map(({ rule, place, message }) => `${rule} ${place.file}:${place.line} ${message}`);
}

describe('code-pattern', () => {
  test.each([
    ['without its hyphen', 'KM4417'],
    ['in small letters', 'km-4417'],
    ['without its beginning', '4417'],
    ['with a revision', 'KM-4417 rev. B'],
    ['as a file is called', 'KM-4417.bin'],
  ])('a code written %s is another spelling', async (_what, spelling) => {
    const bad = `code: "KM-4417"\notherSpellings: ["${spelling}"]\n`;
    expect(await said([{ file: 'profiles/moorlight/km-4417.yaml', good: 'code: "KM-4417"\n', bad }])).toEqual(
      [],
    );
  });
  test('typographic quotes become part of a code, and the help says so', async () => {
    const { findings } = await checkContent(
      editedExample([{ file: newer, good: 'code: "RT-5561"', bad: 'code: “RT-5561”' }]),
    );
    expect(findings.map((one) => one.rule)).toEqual(['code-pattern']);
    expect(findings[0]?.help).toMatch(/^Put it in straight quotes/);
  });
  test.each(['no', '12:30'])('unquoted %s stays text, and is no code', async (code) => {
    expect(await said([{ file: newer, good: 'code: "RT-5561"', bad: `code: ${code}` }])).toEqual([
      `code-pattern ${newer}:2 The code “${code}” does not look like a code of “Moorlight”.`,
    ]);
  });
  test('a duplicate is not named a second time for not fitting', async () => {
    const found = await said([{ file: newer, good: 'code: "RT-5561"', bad: 'code: "km 4417"' }]);
    expect(found.map((one) => one.split(' ')[0])).toEqual(['duplicate-code']);
  });
});

describe('look-alike-codes', () => {
  const alike: readonly TextEdit[] = [
    anyCode,
    { file: newer, good: 'code: "RT-5561"', bad: 'code: "KN-Z093"' },
  ];
  test('is named once, at the later profile', async () => {
    expect(await said(alike)).toEqual([
      `look-alike-codes ${newer}:2 “KN-Z093” and “KN-2093” look alike on a dot-matrix screen, and neither profile says how to tell them apart.`,
    ]);
  });
  test.each([
    ['there', 'profiles/moorlight/kn-2093.yaml', 'origin: factory', 'moorlight/rt-5561'],
    ['here', newer, 'origin: dealer-update', 'moorlight/kn-2093'],
  ])('a hint %s is enough', async (_where, file, good, from) => {
    const bad = `tellApart: [{ from: ${from}, hint: "First figure: two, not Z." }]\n${good}`;
    expect(await said([...alike, { file, good, bad }])).toEqual([]);
  });
  test('the screen decides: rn and m are alike in smooth characters only', async () => {
    const smooth = { file: family, good: 'display: dot-matrix', bad: 'display: anti-aliased' };
    const pattern = { ...anyCode, bad: "pattern: '^[A-Z0-9]{2,3}-[0-9A-Z]{4}$'" };
    const code = { file: newer, good: 'code: "RT-5561"', bad: 'code: "KRN-4417"' };
    expect(await said([pattern, code])).toEqual([]);
    expect(await said([pattern, code, smooth])).toHaveLength(1);
  });
  test('a thousand codes of one look take one finding each but the first', async () => {
    // Eleven places of 0 or O: 2048 codes that fold to one.
    const codes = (count: number): TextEdit[] =>
      Array.from({ length: count }, (_, index) => {
        const code = index.toString(2).padStart(11, '0').replaceAll('1', 'O');
        const text = exampleFiles.get(newer) ?? '';
        return {
          file: `profiles/moorlight/many-${index}.yaml`,
          good: '',
          bad: text.replace('RT-5561', code).replace(/sameAs: .*\n/, ''),
        };
      });
    const pattern = { ...anyCode, bad: "pattern: '^[-A-Z0-9]{7,11}$'" };
    const found = await said([pattern, ...codes(1000)]);
    expect(found.filter((one) => one.startsWith('look-alike-codes'))).toHaveLength(999);
  });
});

describe('fitment', () => {
  const overlap = { file: older, good: 'toYear: 2014', bad: 'toYear: 2016' };
  test('an overlap with features of their own is decided by sight', async () => {
    expect(await said([overlap])).toEqual([]);
  });
  test('one feature more on one side is a way to tell', async () => {
    const same = {
      file: older,
      good: '  - feature: No knob at all.\n',
      bad: '  - feature: One knob in the middle, under the screen.\n  - feature: A red key.\n',
    };
    expect(await said([overlap, same])).toEqual([]);
  });
  test('the same words are no way to tell, however written', async () => {
    const same = {
      file: older,
      good: 'feature: No knob at all.',
      bad: 'feature: one knob, in middle under screen',
    };
    expect(await said([overlap, same])).toEqual([
      `fitment-undecided ${family}:6 “Fellside” and “Moorlight” are both fitted to “Ordwick”, 2015 to 2016, and are to be known by the same features.`,
    ]);
    // Without a year in common, model line and year decide.
    expect(await said([same])).toEqual([]);
  });
  test('the same model line of another maker is another model line', async () => {
    const maker = { file: older, good: 'maker: Kestrane', bad: 'maker: Another' };
    expect(await said([maker, { file: older, good: 'toYear: 2014', bad: 'toYear: 2011' }])).toEqual([]);
  });
  test('a gap is named with its years and both ends', async () => {
    expect(await said([{ file: older, good: 'toYear: 2014', bad: 'toYear: 2011' }])).toEqual([
      `fitment-gap ${family}:6 No family is fitted to “Ordwick”, 2012 to 2014: “Fellside” ends with 2011, and “Moorlight” begins with 2015.`,
    ]);
  });
  test('years that run backwards are named once, without the gap they leave', async () => {
    expect(
      await said([
        { file: older, good: 'fromYear: 2010, toYear: 2014', bad: 'fromYear: 2014, toYear: 2010' },
      ]),
    ).toEqual([`fitment-range ${older}:6 The last year of “Ordwick”, 2010, is before its first, 2014.`]);
  });
});
