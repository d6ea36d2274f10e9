/** Builds run where the program's packages are found, and leave the process where it was. */
import { existsSync } from 'node:fs';
import { join, sep } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../src/publish/project.ts';
import { fromOwnFolder } from '../../src/publish/working-folder.ts';

test('a run has a folder of its own within the program, which is gone after it', async () => {
  const before = process.cwd();
  const [one, two] = [
    await fromOwnFolder(async () => process.cwd()),
    await fromOwnFolder(async () => process.cwd()),
  ];
  expect(one.startsWith(join(projectRoot, '.astro') + sep)).toBe(true);
  expect(two).not.toBe(one);
  expect([one, two].filter((folder) => existsSync(folder))).toEqual([]);
  expect(process.cwd()).toBe(before);
});

test('a run that fails goes back too', async () => {
  const before = process.cwd();
  await expect(fromOwnFolder(() => Promise.reject(new Error('no room')))).rejects.toThrow('no room');
  expect(process.cwd()).toBe(before);
});
