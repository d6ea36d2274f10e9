/** A build never leaves half a site, nor takes away what is not a site. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { replaceFolder } from '../../src/publish/output-folder.ts';

let parent: string;
let outDir: string;
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'readback-output-'));
  outDir = join(parent, 'site');
});
afterEach(() => rmSync(parent, { recursive: true, force: true }));

const makeSite = (words: string) => async (fresh: string) => {
  mkdirSync(join(fresh, 'pagefind'), { recursive: true });
  writeFileSync(join(fresh, 'codes.json'), '{}');
  writeFileSync(join(fresh, 'index.html'), words);
};
const shown = (): string => readFileSync(join(outDir, 'index.html'), 'utf8');

test('a first site, then a second in its place, and nothing beside them', async () => {
  await replaceFolder(outDir, makeSite('first'));
  expect(shown()).toBe('first');
  await replaceFolder(outDir, makeSite('second'));
  expect(shown()).toBe('second');
  expect(readdirSync(parent)).toEqual(['site']);
});

test('a build that fails leaves the last site and no temporary folder', async () => {
  await replaceFolder(outDir, makeSite('first'));
  const failing = replaceFolder(outDir, async (fresh) => {
    await makeSite('half')(fresh);
    throw new Error('no room');
  });
  await expect(failing).rejects.toThrow('no room');
  expect(shown()).toBe('first');
  expect(readdirSync(parent)).toEqual(['site']);
});

test('a folder with anything else in it is refused and left alone', async () => {
  mkdirSync(outDir);
  writeFileSync(join(outDir, 'letters.txt'), 'dear all');
  await expect(replaceFolder(outDir, makeSite('site'))).rejects.toThrow(
    'holds files that are not an earlier site',
  );
  expect(readdirSync(outDir)).toEqual(['letters.txt']);
});

test('a link is refused, wherever it leads, and left alone', async () => {
  const elsewhere = join(parent, 'elsewhere');
  for (const present of [false, true]) {
    if (present) mkdirSync(elsewhere);
    else symlinkSync(elsewhere, outDir);
    await expect(replaceFolder(outDir, makeSite('site'))).rejects.toThrow('is a link to another place');
  }
  expect(readdirSync(elsewhere)).toEqual([]);
  expect(readlinkSync(outDir)).toBe(elsewhere);
});

test('an empty folder is taken', async () => {
  mkdirSync(outDir);
  await replaceFolder(outDir, makeSite('site'));
  expect(shown()).toBe('site');
});
