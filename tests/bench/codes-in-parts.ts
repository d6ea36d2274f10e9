/** The lookup in a list that is sent in files: as good as with the whole list? How many bytes does a phone fetch for a code? */
import { gzipSync } from 'node:zlib';
import { type Lookup, lookupOf } from '../../src/client/code-index.ts';
import { CodeFiles } from '../../src/client/code-list.ts';
import { type ListSearch, mostLoaded } from '../../src/client/list-search.ts';
import { type CodeEntry, type CodeIndex, findCode } from '../../src/codes/index.ts';
import { codeFiles } from '../../src/views/code-directory.ts';
import { type CodeList, familyCodes } from '../../src/views/code-list-format.ts';
import { misread, modelReader, otherReader, type Reader } from '../codes/readers.ts';
import { randomNumbers } from '../codes/sample.ts';

const rounds = 500;

/** Some codes in the form they are sent in. */
export function sentList(known: readonly CodeEntry[]): CodeList {
  return [...Map.groupBy(known, ({ family }) => family)].map(([id, entries]) => {
    const slug = (code: string): string => `${id}/${code.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`;
    const rows = entries.map(({ code, otherSpellings }) => ({ code, profile: slug(code), otherSpellings }));
    return familyCodes({ id, name: `Family ${id}`, display: entries[0]?.display ?? 'dot-matrix' }, rows);
  });
}

/** A sentence as long as those of profiles, with the numbers that tell them apart. */
function sentence(at: number): string {
  const [volts, step, boost] = [(2 + (at % 613) / 100).toFixed(2), 10 + (at % 17), (at % 97) / 10];
  return `Puts out up to ${volts} V clean, at volume step ${step} of 30; adds ${boost} dB of bass at low steps, which fades as it is turned up.`;
}

/** A phone that has nothing yet, and what it fetches. */
async function phone(files: ReadonlyMap<string, string>, sizes: ReadonlyMap<string, number>) {
  const fetched = new Set<string>();
  const read = async (path: string): Promise<unknown> => {
    fetched.add(path);
    const text = files.get(path);
    if (text === undefined) throw new Error(`There is no ${path}.`);
    return JSON.parse(text);
  };
  const lookup = await lookupOf(new CodeFiles('', read), { base: '' });
  const bytes = (): number => [...fetched].reduce((sum, path) => sum + (sizes.get(path) ?? 0), 0);
  return { lookup, bytes };
}

async function found(lookup: Lookup, typed: string, family?: string): Promise<ListSearch> {
  const asking = { isCurrent: () => true, left: mostLoaded, hasWaited: true };
  const search = await lookup.find(typed, { limit: 6, ...(family !== undefined && { family }) }, asking);
  if (!search) throw new Error('A search was given up.');
  for (const { profile } of [...search.candidates, ...search.elsewhere]) await lookup.sentence(profile);
  return search;
}

/** Compares the lookup in files with that in the whole list, and prints the bytes fetched. */
export async function inParts(index: CodeIndex, known: readonly CodeEntry[]): Promise<void> {
  const list = sentList(known);
  const profiles = list.flatMap(({ id, codes }) =>
    codes.split('\n').map((code) => `${id}/${code.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`),
  );
  const made = codeFiles(list, Object.fromEntries(profiles.map((profile, at) => [profile, sentence(at)])));
  const files = new Map([...made].map(([path, content]) => [path, JSON.stringify(content)]));
  const sizes = new Map([...files].map(([path, text]) => [path, gzipSync(text).length]));
  const all = [...sizes.values()].reduce((sum, size) => sum + size, 0);
  console.log(
    `  in files: ${files.size}, ${(all / 1000).toFixed(0)} kB gzipped in all; codes.json ${((sizes.get('codes.json') ?? 0) / 1000).toFixed(1)} kB`,
  );
  const readers: readonly (readonly [string, Reader, number, boolean])[] = [
    ['read right', modelReader('the model'), 0, false],
    ['1 misread, the model', modelReader('the model'), 1, false],
    ['1 misread, another matrix', otherReader, 1, false],
    ['2 misread, the model', modelReader('the model'), 2, false],
    ['1 misread, the model, family known', modelReader('the model'), 1, true],
    ['2 misread, the model, family known', modelReader('the model'), 2, true],
  ];
  for (const [name, reader, slips, isFamilyKnown] of readers) {
    const random = randomNumbers(5);
    const bytes: number[] = [];
    let [first, firstOfWhole, sameVerdict, wrong, wrongOfWhole, unsaid] = [0, 0, 0, 0, 0, 0];
    for (let round = 0; round < rounds; round += 1) {
      const entry = known[Math.floor(random() * known.length)] as CodeEntry;
      const typed = slips === 0 ? entry.code : misread(entry, slips, reader, random);
      const family = isFamilyKnown ? entry.family : undefined;
      const { lookup, bytes: fetched } = await phone(files, sizes);
      const search = await found(lookup, typed, family);
      const whole = findCode(index, typed, { limit: 6, ...(family !== undefined && { family }) });
      bytes.push(fetched());
      const isFirst = ({
        candidates,
      }: {
        candidates: readonly { code: string; family: string }[];
      }): boolean => candidates[0]?.code === entry.code && candidates[0].family === entry.family;
      if (isFirst(search)) first += 1;
      if (isFirst(whole)) firstOfWhole += 1;
      if (search.verdict === whole.verdict) sameVerdict += 1;
      if (search.verdict === 'found' && !isFirst(search)) wrong += 1;
      if (whole.verdict === 'found' && !isFirst(whole)) wrongOfWhole += 1;
      if (isFirst(whole) && !isFirst(search) && !search.isPart) unsaid += 1;
    }
    const share = (count: number): string => `${((100 * count) / rounds).toFixed(2)} %`;
    console.log(
      `  in files, ${name}: first ${share(first)} (whole list ${share(firstOfWhole)}), same verdict ${share(sameVerdict)}, found wrongly ${share(wrong)} (${share(wrongOfWhole)}), worse without saying so ${share(unsaid)}; ${spread(bytes)}`,
    );
  }
  await keyByKey(known, files, sizes);
}

/** Typed slowly, a key at a time, with one misread: everything fetched from the first key to the last. */
async function keyByKey(
  known: readonly CodeEntry[],
  files: ReadonlyMap<string, string>,
  sizes: ReadonlyMap<string, number>,
): Promise<void> {
  const random = randomNumbers(6);
  const bytes: number[] = [];
  for (let round = 0; round < rounds / 2; round += 1) {
    const entry = known[Math.floor(random() * known.length)] as CodeEntry;
    const typed = misread(entry, 1, round % 2 === 0 ? modelReader('the model') : otherReader, random);
    const { lookup, bytes: fetched } = await phone(files, sizes);
    for (let keys = 1; keys <= typed.length; keys += 1) await found(lookup, typed.slice(0, keys));
    bytes.push(fetched());
  }
  console.log(`  in files, typed key by key with a pause at each: ${spread(bytes)}`);
}

function spread(bytes: number[]): string {
  const sorted = bytes.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    ((sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0) / 1000).toFixed(1);
  return `fetched ${at(0.5)} kB (median), ${at(0.99)} kB (99 %), ${at(1)} kB (most)`;
}
