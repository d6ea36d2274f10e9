import { expect, test } from 'vitest';
import { familyOf, markKept, pagePath } from '../../src/worker/plan.ts';

const scope = 'https://help.example/help/';

test('one page has one path, however its address is written', () => {
  for (const [address, path] of [
    ['', ''],
    ['?code=G60D', ''],
    ['index.html', ''],
    ['units/moorlight/', 'units/moorlight/'],
    ['units/moorlight', 'units/moorlight/'],
    ['units/moorlight/index.html#steps', 'units/moorlight/'],
    ['404.html', '404.html'],
  ] as const) {
    expect(pagePath(`${scope}${address}`, scope), address).toBe(path);
  }
});

test('files and other sites are no pages', () => {
  for (const address of [`${scope}codes.json`, `${scope}assets/start.js`, 'https://help.example/shop/']) {
    expect(pagePath(address, scope), address).toBeUndefined();
  }
});

test('a page belongs to the family of its unit or profile', () => {
  expect(familyOf('units/moorlight/way-in/')).toBe('moorlight');
  expect(familyOf('profiles/moorlight/km-4417/readings/')).toBe('moorlight');
  for (const path of ['', 'units/', 'guides/wiring/']) expect(familyOf(path), path).toBeUndefined();
});

test('a kept page is marked once, whatever it speaks of', () => {
  expect(markKept('<!doctype html><html lang="en"><p>&lt;html</p>', 'slow')).toBe(
    '<!doctype html><html data-kept="slow" lang="en"><p>&lt;html</p>',
  );
});
