import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { type Lookup, lookupOf } from '../../src/client/code-index.ts';
import { CodeFiles } from '../../src/client/code-list.ts';
import { mostLoaded } from '../../src/client/list-search.ts';
import { searchFor } from '../../src/client/search-codes.ts';
import { verdictWords } from '../../src/client/verdict-words.ts';
import { buildCodeIndex, type CodeEntry, findCode } from '../../src/codes/index.ts';
import { codeFiles } from '../../src/views/code-directory.ts';
import { isWholeList } from '../../src/views/code-list-format.ts';
import { sentList } from '../bench/codes-in-parts.ts';
import { largeList } from './large-list.ts';
import { misread, modelReader } from './readers.ts';
import { randomNumbers } from './sample.ts';

const { known } = largeList(7000, 40, 4);
const index = buildCodeIndex(known);
let files: Map<string, string>;
let fetched: string[] = [];

function filesOf(entries: readonly CodeEntry[]): Map<string, string> {
  const ids = entries.map(
    ({ family, code }) => `${family}/${code.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`,
  );
  const made = codeFiles(
    sentList(entries),
    Object.fromEntries(ids.map((id) => [id, `What ${id} puts out.`])),
  );
  return new Map([...made].map(([path, content]) => [path, JSON.stringify(content)]));
}

beforeAll(() => {
  files = filesOf(known);
});

async function freshLookup(from = files): Promise<Lookup> {
  fetched = [];
  const read = async (path: string): Promise<unknown> => {
    fetched.push(path);
    return JSON.parse(from.get(path) ?? '');
  };
  return lookupOf(new CodeFiles('', read), { base: '' });
}

const find = async (lookup: Lookup, typed: string, options = {}) => {
  const search = await lookup.find(typed, options, {
    isCurrent: () => true,
    left: mostLoaded,
    hasWaited: true,
  });
  if (!search) throw new Error('given up');
  return search;
};

test('a short list is sent whole, with all sentences in one file', () => {
  const short = filesOf(known.slice(0, 100));
  expect([...short.keys()]).toEqual(['code-sentences.json', 'codes.json']);
  expect(isWholeList(JSON.parse(short.get('codes.json') ?? ''))).toBe(true);
});

test('a code typed right, or with one misread, is found as in the whole list; a phone fetches less than 60 kB', async () => {
  const random = randomNumbers(9);
  for (let round = 0; round < 15; round += 1) {
    const one = known[Math.floor(random() * known.length)] as (typeof known)[number];
    const typed = round % 3 === 0 ? one.code : misread(one, 1, modelReader('the model'), random);
    const lookup = await freshLookup();
    const search = await find(lookup, typed);
    const whole = findCode(index, typed);
    expect([search.verdict, search.candidates[0]?.code], typed).toEqual([
      whole.verdict,
      whole.candidates[0]?.code,
    ]);
    const [best] = search.candidates;
    if (best) expect(await lookup.sentence(best.profile)).toBe(`What ${best.profile} puts out.`);
    const bytes = fetched.reduce((sum, path) => sum + gzipSync(files.get(path) ?? '').length, 0);
    expect(bytes).toBeLessThan(60_000);
  }
});

test('with the unit known all of its codes are searched', async () => {
  const random = randomNumbers(10);
  for (let round = 0; round < 5; round += 1) {
    const one = known[Math.floor(random() * known.length)] as (typeof known)[number];
    const typed = misread(one, 2, modelReader('the model'), random);
    const options = { family: one.family };
    const search = await find(await freshLookup(), typed, options);
    expect(search.candidates[0]?.code, typed).toBe(findCode(index, typed, options).candidates[0]?.code);
    expect(search.isPart).toBeUndefined();
  }
});

test('what has been left out is said', async () => {
  const ofOne = known.map((one, at) => ({ ...one, code: `K${String(at * 7919 + 100_000)}` }));
  const begun = await searchFor(await freshLookup(filesOf(ofOne)), 'K', undefined, () => true);
  expect(begun && verdictWords(begun)).toBe('About 7000 codes begin like this: go on typing.');
  const strange = await find(await freshLookup(), 'ZQ0ZQ0ZQ0');
  expect(verdictWords(strange)).toMatch(/Only codes that begin or end like this were searched/);
});

test('what is no longer asked for loads nothing more', async () => {
  const lookup = await freshLookup();
  expect(await searchFor(lookup, 'ZQ0ZQ0ZQ0', undefined, () => false)).toBeUndefined();
  expect(fetched.some((path) => path.includes('end-'))).toBe(false);
});
