import { symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CannotRun, readBase } from '../../src/base/index.ts';
import { ContentCopy } from '../content-copy.ts';

let copy: ContentCopy;
beforeAll(async () => {
  copy = await ContentCopy.make();
});
afterAll(() => copy.remove());

async function faults(): Promise<string[]> {
  const { findings } = await readBase(copy.folder);
  return findings.map(({ rule, place, message }) => `${rule} ${place.file}: ${message}`);
}

test('a folder that is not there stops the run with a message', async () => {
  await expect(readBase(join(copy.folder, 'nowhere'))).rejects.toThrow(CannotRun);
});

test('entries are linked: families to profiles, profiles to sessions, oldest first', async () => {
  const { base } = await readBase(copy.folder);
  expect(base.profilesOfFamily.get('brasslight')?.length).toBeGreaterThan(1);
  const sessions = base.sessionsOfProfile.get('brasslight/8b0s-i5z') ?? [];
  const dates = sessions.map((session) => session.data.date);
  expect(dates.length).toBeGreaterThan(1);
  expect(dates).toEqual([...dates].sort());
  expect(Object.isFrozen(base)).toBe(true);
});

describe('files in the wrong place or form', () => {
  test.each([
    [
      'profile/brasslight/x.yaml',
      'a: 1\n',
      'stray-file',
      'No entry is kept here, so nothing reads this file.',
    ],
    ['profiles/brasslight/x.yml', 'a: 1\n', 'stray-file', 'The entries in profiles/ end in .yaml.'],
    ['profiles/brasslight/X 1.yaml', 'a: 1\n', 'stray-file', 'This name cannot stand in an address.'],
    [
      'outputs/2024-02-north/notes.txt',
      'x',
      'stray-file',
      'A bench session is a folder with the files session.yaml and readings.csv.',
    ],
    ['sources/list.yaml', '- a\n- b\n', 'schema', 'This source is not made of “name: value” lines.'],
    ['sources/empty.yaml', '', 'schema', 'This source is not made of “name: value” lines.'],
    [
      'sources/latin.yaml',
      new Uint8Array([0x61, 0x3a, 0x20, 0xe9, 0x0a]),
      'syntax',
      'This file is not UTF-8 text.',
    ],
    ['sources/huge.yaml', 'a'.repeat(128 * 1024 + 1), 'syntax', 'This file is 129 kB; the most is 128 kB.'],
    [
      'outputs/lost/readings.csv',
      'profile,channel,step,hz,voltsRms,thdPercent,repeat\n',
      'unsourced',
      'These readings have no session.yaml, so nobody can tell where they come from.',
    ],
  ])('%s', async (file, text, rule, message) => {
    const own = await ContentCopy.make();
    try {
      await own.write(file, text);
      const { findings } = await readBase(own.folder);
      expect(findings.map((one) => `${one.rule} ${one.place.file}: ${one.message}`)).toEqual([
        `${rule} ${file}: ${message}`,
      ]);
    } finally {
      await own.remove();
    }
  });

  test('a link to another place is not followed', async () => {
    await symlink('/etc', join(copy.folder, 'profiles', 'outside'));
    expect(await faults()).toEqual([
      'stray-file profiles/outside: This is a link to another place; links are not followed.',
    ]);
  });
});
