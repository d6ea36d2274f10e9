import { expect, test } from 'vitest';
import {
  mostBytesOfAPage,
  mostFamilyBytes,
  mostFamilyPages,
  offlineFiles,
} from '../../src/publish/offline-plan.ts';
import type { SiteFile } from '../../src/publish/stamp-pages.ts';

const file = (path: string, bytes = 1000): SiteFile => ({
  path,
  bytes,
  digest: `d-${path}`,
  revision: `r-${path}`,
});
const small = [
  file('404.html'),
  file('assets/start.Ab1.js', 500),
  file('codes.json', 300),
  file('codes/index.html'),
  file('favicon.svg', 20),
  file('guides/wiring/index.html'),
  file('icons/icon-512.png'),
  file('index.html'),
  file('manifest.webmanifest', 10),
  file('offline/index.html'),
  file('pagefind/pagefind.js'),
  file('profiles/moorlight/km-4417/index.html', 4000),
  file('profiles/moorlight/km-4417/readings/index.html', 90_000),
  file('units/index.html'),
  file('units/moorlight/index.html', 2000),
  file('units/moorlight/way-in/index.html', 1500),
];
const planOf = (files: readonly SiteFile[], base = '/help/') => offlineFiles({ version: 'v1', files }, base);

test('the first visit keeps the lookup, the lists, and what they need', () => {
  const { plan, sizes } = planOf(small);
  expect(plan.precache).toEqual([
    { url: '/help/', revision: 'd-index.html' },
    { url: '/help/assets/start.Ab1.js', revision: null },
    { url: '/help/codes.json', revision: 'd-codes.json' },
    { url: '/help/codes/', revision: 'd-codes/index.html' },
    { url: '/help/favicon.svg', revision: 'd-favicon.svg' },
    { url: '/help/manifest.webmanifest', revision: 'd-manifest.webmanifest' },
    { url: '/help/offline/', revision: 'd-offline/index.html' },
    { url: '/help/units/', revision: 'd-units/index.html' },
  ]);
  expect(sizes.precache).toBe(4 * 1000 + 500 + 300 + 20 + 10);
  expect(plan.otherPages).toEqual(['guides/wiring/']);
});

test('a family is its unit, the pages below it, its profiles; the long tables only where opened', () => {
  const { lists, sizes } = planOf(small);
  expect(lists.get('moorlight')).toEqual({
    pages: [
      ['units/moorlight/', 'r-units/moorlight/index.html'],
      ['units/moorlight/way-in/', 'r-units/moorlight/way-in/index.html'],
      ['profiles/moorlight/km-4417/', 'r-profiles/moorlight/km-4417/index.html'],
    ],
    others: ['profiles/moorlight/km-4417/readings/'],
  });
  expect(sizes.family).toBe(7500);
});

test('what the planner needs goes with the family, after the pages it is for', () => {
  const { plan, lists } = planOf([
    ...small,
    file('planner.json', 700),
    file('planner/index.html'),
    file('profiles/moorlight/km-4417/planner.json', 60_000),
    file('units/moorlight/planner.json', 9000),
  ]);
  expect(lists.get('moorlight')?.pages.map(([path]) => path)).toEqual([
    'units/moorlight/',
    'units/moorlight/way-in/',
    'units/moorlight/planner.json',
    'profiles/moorlight/km-4417/',
    'profiles/moorlight/km-4417/planner.json',
  ]);
  const urls = plan.precache.map(({ url }) => url);
  expect(urls).toContain('/help/planner/');
  expect(urls).toContain('/help/planner.json');
});

test('the order of the files makes no difference, the base path only to the addresses', () => {
  expect(planOf([...small].reverse()).plan).toEqual(planOf(small).plan);
  expect(planOf(small, '/').plan.precache[0]?.url).toBe('/');
  expect(planOf(small, '/').plan.families).toEqual(planOf(small).plan.families);
});

test('a changed page changes the digest of its family’s list', () => {
  const changed = small.map((one) =>
    one.path.startsWith('profiles/') ? { ...one, revision: 'other' } : one,
  );
  expect(planOf(changed).plan.families).not.toEqual(planOf(small).plan.families);
});

test('nothing is kept without bounds, and what is left out is named', () => {
  const many = Array.from({ length: mostFamilyPages + 5 }, (_, index) =>
    file(`profiles/moorlight/p-${String(index).padStart(4, '0')}/index.html`),
  );
  const { lists, sizes } = planOf([...small, ...many]);
  expect(lists.get('moorlight')?.pages.length).toBe(mostFamilyPages);
  // The unit, its way in and its first profile are among the kept ones.
  expect(sizes.leftOut.length).toBe(5 + 3);
  expect(lists.get('moorlight')?.others).toContain(sizes.leftOut[0]);

  const large = file('profiles/moorlight/large/index.html', mostFamilyBytes);
  expect(planOf([...small, large]).sizes.leftOut).toEqual(['profiles/moorlight/large/']);
  const codes = small.map((one) =>
    one.path === 'codes/index.html' ? { ...one, bytes: mostBytesOfAPage + 1 } : one,
  );
  expect(planOf(codes).sizes.leftOut).toEqual(['codes/']);
  expect(planOf(codes).plan.precache.map(({ url }) => url)).not.toContain('/help/codes/');
  expect(planOf(codes).plan.otherPages).toContain('codes/');
});

test('decision tables are kept with every family, as its profiles link to them, and belong to none', () => {
  const tables = [file('tables/index.html', 500), file('tables/what-now/index.html', 3000)];
  const { plan, lists } = planOf([...small, ...tables]);
  const { pages = [], others } = lists.get('moorlight') ?? {};
  expect(pages.map(([path]) => path).slice(-2)).toEqual(['tables/', 'tables/what-now/']);
  expect(others).not.toContain('tables/');
  expect(plan.otherPages).toEqual(['guides/wiring/', 'tables/', 'tables/what-now/']);
  const before = planOf(small).plan.families;
  expect(plan.families).not.toEqual(before);
});

test('of a list sent in files a unit’s own codes go with the family', () => {
  const { plan, lists } = planOf([
    ...small,
    file('lookup/unit-moorlight.json', 900),
    file('lookup/begin-A.json', 900),
  ]);
  expect(lists.get('moorlight')?.pages.map(([path]) => path)).toContain('lookup/unit-moorlight.json');
  expect(JSON.stringify(plan)).not.toContain('begin-A');
});
