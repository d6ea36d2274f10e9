/** Linked data says what the page says, and nothing of what it does not. */
import { expect, test } from 'vitest';
import { dataPage } from '../../src/views/data-page.ts';
import { guidePages } from '../../src/views/guide-page.ts';
import {
  breadcrumbs,
  linkedData,
  linkedDataText,
  linkedGuide,
  linkedProfile,
  linkedSite,
} from '../../src/views/linked-data.ts';
import { siteView } from '../../src/views/site.ts';
import { allViews, demoAnswers } from './sample.ts';

const answers = await demoAnswers();
const site = { ...siteView(answers), address: 'https://shop.example/help/' };
const pages = await allViews(answers, 'profilePages');

test('a profile is a dataset with the values of its page; what was not measured has none', () => {
  for (const page of pages) {
    const thing = linkedProfile(site, page);
    const measured = thing?.variableMeasured as Record<string, unknown>[];
    expect(measured.map(({ name }) => name)).toEqual(page.values.map(({ label }) => label));
    for (const [at, { description, ...one }] of measured.entries()) {
      expect(String(description)).toContain(page.values[at]?.value);
      // A bound is given as the least or the most, never as the value.
      expect(page.values[at]?.value.startsWith('at least')).toBe('minValue' in one);
      expect(page.values[at]?.value.startsWith('at most')).toBe('maxValue' in one);
      expect('value' in one).toBe(!('minValue' in one) && !('maxValue' in one));
    }
    expect(thing?.temporalCoverage).toMatch(/^\d{4}-\d{2}-\d{2}(\/\d{4}-\d{2}-\d{2})?$/);
  }
  const [page] = pages;
  expect(page && linkedProfile(site, { ...page, headline: [] })).toBeUndefined();
});

test('where values go, the notice of the site goes too, and the licence only where there is one', () => {
  const [page] = pages;
  if (!page) throw new Error('no page');
  expect(linkedProfile(site, page)?.description).toContain('All data here is invented');
  expect(linkedData(site, dataPage(answers), 'x').description).toContain('All data here is invented');
  expect(linkedSite(site).description).toContain('All data here is invented');
  expect(linkedProfile(site, page)?.license).toBe('https://opensource.org/license/mit');
  expect(linkedProfile({ ...site, licence: undefined }, page)).not.toHaveProperty('license');
});

test('the way to a page begins at the start page and ends with itself', () => {
  const crumbs = breadcrumbs(site.address, [{ text: 'Units', path: 'units/' }], {
    text: 'Here',
    path: 'units/a/',
  });
  expect(crumbs.itemListElement).toEqual([
    { '@type': 'ListItem', position: 1, name: 'Look up a code', item: 'https://shop.example/help/' },
    { '@type': 'ListItem', position: 2, name: 'Units', item: 'https://shop.example/help/units/' },
    { '@type': 'ListItem', position: 3, name: 'Here', item: 'https://shop.example/help/units/a/' },
  ]);
});

test('a guide is an article that cites its sources', async () => {
  const guides = await guidePages(answers, '/help/');
  const cited = guides.map((guide) => linkedGuide(site, guide).citation as { url: string }[]);
  expect(cited.map((list) => list.length)).toEqual(guides.map(({ sources }) => sources.length));
  for (const { url } of cited.flat()) expect(url).toMatch(/^https:\/\/shop\.example\/help\/sources\//);
});

test('no text can end the script element it stands in', () => {
  const text = linkedDataText([{ '@type': 'Thing', name: '</script><script>alert(1)' }]);
  expect(text).not.toContain('<');
  expect(JSON.parse(text)['@graph'][0].name).toBe('</script><script>alert(1)');
});
