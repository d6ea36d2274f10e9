import { expect, test } from 'vitest';
import { fileCodes, fileName, filesWanted } from '../../src/codes/code-files.ts';
import { canonicalCode, type ListedFile, partOf, sides } from '../../src/codes/index.ts';
import { shownForm } from '../../src/codes/normalise.ts';
import { largeList } from './large-list.ts';
import { modelReader, otherReader, singleSlips } from './readers.ts';
import { entry } from './sample.ts';

const most = 40;
const { known } = largeList(2000, 12, 3);
const files = sides.flatMap((side) => fileCodes(known, side, most));
const listed = [...Map.groupBy(files, ({ side, key }) => `${side} ${key}`).values()].map(
  (parts): ListedFile => ({
    side: parts[0]?.side ?? 'begin',
    key: parts[0]?.key ?? '',
    parts: parts.length,
    codes: parts.reduce((sum, { entries }) => sum + entries.length, 0),
    size: 1,
  }),
);
const named = new Map(
  files.map((file) => [
    fileName({ file: { ...file, codes: 0, size: 0 }, part: file.part }),
    new Set(file.entries.map(({ profile }) => profile)),
  ]),
);

function has(typed: string, profile: string, side: (typeof sides)[number], only: 'first' | 'all'): boolean {
  const { first, more, longer } = filesWanted(listed, side, canonicalCode(typed));
  const wanted = only === 'first' ? first : [...first, ...more, ...longer];
  return wanted.some((one) => named.get(fileName(one))?.has(profile));
}

test('each side has every code, in files of about the size asked for', () => {
  expect(known.length).toBeGreaterThan(1900);
  for (const side of sides) {
    const own = files.filter((file) => file.side === side);
    expect(new Set(own.flatMap(({ entries }) => entries))).toEqual(new Set(known));
    for (const { entries } of own) expect(entries.length).toBeLessThan(2 * most);
  }
});

test('names are different, and letters, digits and hyphens', () => {
  expect(named.size).toBe(files.length);
  for (const name of named.keys()) expect(name).toMatch(/^[\w-]+$/);
  const odd = fileCodes([entry('É|1'), entry('É/2')], 'begin', 1);
  for (const file of odd) {
    expect(fileName({ file: { ...file, codes: 1, size: 1 }, part: file.part })).toMatch(/^[\w-]+$/);
  }
});

test('a code typed right, or with look-alikes, or without its zeros, is in the first files of either side', () => {
  for (const { code, profile } of known) {
    const canonical = canonicalCode(code);
    const alike = canonical
      .replaceAll('O', '0')
      .replaceAll('I', '1')
      .replaceAll('S', '5')
      .replaceAll('B', '8');
    for (const typed of [code, alike, canonical.replace(/^0X?0*/, '')]) {
      for (const side of sides) expect(has(typed, profile, side, 'first'), `${code} as ${typed}`).toBe(true);
    }
  }
});

test('with any single slip it is in the files of one side or the other', () => {
  for (const { code, profile, display = 'anti-aliased' } of known.filter((_, at) => at % 250 === 0)) {
    const canonical = canonicalCode(code);
    for (const reader of [modelReader('the model'), otherReader]) {
      for (const { at, length, typed } of singleSlips(shownForm(code), display, reader)) {
        const text = canonical.slice(0, at) + typed + canonical.slice(at + length);
        const isThere = sides.some((side) => has(text, profile, side, 'all'));
        expect(isThere, `${code} as ${text}`).toBe(true);
      }
    }
  }
});

test('other spellings lead to the code', () => {
  const some = [entry('AC13-4', 'one', ['UX77-4']), ...known];
  const spelt = fileCodes(some, 'begin', most).filter(({ entries }) => entries.includes(some[0] as never));
  expect(spelt.map(({ key }) => 'AC134'.startsWith(key) || 'UX774'.startsWith(key))).toEqual([true, true]);
});

test('codes that begin alike as far as may be looked at are parted by all they are', () => {
  const alike = Array.from({ length: 900 }, (_, at) =>
    entry(`SAME-${at % 30}${String(at).padStart(3, '0')}`),
  );
  for (const file of fileCodes(alike, 'begin', 100)) {
    expect(file.entries.length).toBeLessThan(200);
    expect(file.part).toBeLessThan(file.parts);
  }
  expect(partOf('A', 1)).toBe(0);
});
