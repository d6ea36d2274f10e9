import { expect, test } from 'vitest';
import { isNewerThere, type Versions } from '../../src/client/freshness.ts';

const same: Versions = { page: 'b', waiting: undefined, active: 'b', isKept: false, hasChanged: false };

test('a worker that waits with another version is newer', () => {
  expect(isNewerThere({ ...same, waiting: 'c' })).toBe(true);
  expect(isNewerThere({ ...same, waiting: 'b', active: 'a' })).toBe(false);
});

test('a page fresh from the network is newer than the worker at work', () => {
  expect(isNewerThere({ ...same, active: 'a' })).toBe(false);
});

test('a kept page, and one the worker overtook, are older than it', () => {
  expect(isNewerThere({ ...same, page: 'a', isKept: true })).toBe(true);
  expect(isNewerThere({ ...same, page: 'a', hasChanged: true })).toBe(true);
});

test('no news where all is of one version, or nobody says', () => {
  expect(isNewerThere({ ...same, isKept: true, hasChanged: true })).toBe(false);
  expect(isNewerThere({ ...same, active: undefined, isKept: true })).toBe(false);
});
