/** The code field on a page of another site: what it answers, and what it leaves alone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { axeViolations, coloursIn } from './axe.ts';
import { counted, follow, launchBrowser, nextFrames, says, textOf, visible } from './browser.ts';
import { type ForeignSite, foreignSite } from './foreign-page.ts';

let browser: Browser;
let club: ForeignSite;
let context: BrowserContext;
let page: Page;
let requests: URL[];
let trouble: string[];

beforeAll(async () => {
  browser = await launchBrowser();
  club = await foreignSite({ site: inject('siteAddress') });
});
afterAll(async () => {
  await club.close();
  await browser.close();
});
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
  [requests, trouble] = [[], []];
  page.on('request', (request) => requests.push(new URL(request.url())));
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) trouble.push(message.text());
  });
  page.on('pageerror', (error) => trouble.push(String(error)));
  await page.goto(club.address);
  // The script comes when it comes; the field is there with it.
  await field().waitFor();
});
afterEach(() => context.close());

const field = () => page.getByRole('combobox', { name: 'Code on your screen' });
const options = () => page.getByRole('listbox', { name: 'Codes that fit' }).getByRole('option');
const verdict = () => page.locator('readback-code-field #verdict');
const answer = () => page.locator('readback-code-field .answer');

test('a right code gets its answer in a sentence, with the way to its page', async () => {
  await field().fill('G60D-2ZS');
  await visible(answer()).toBe(true);
  await says(answer()).toMatch(/^G60D-2ZSBrasslightClean up to step \d+ of 30: [\d.]+\sV/);
  expect(await answer().getAttribute('role')).toBe('status');
  const link = answer().getByRole('link', { name: 'Everything known of G60D-2ZS' });
  await follow(link, `${inject('siteAddress')}profiles/brasslight/g60d-2zs/`);
  expect(trouble).toEqual([]);
});

test('the sentence is the one the code’s own page gives', async () => {
  await field().fill('0x2F6');
  await visible(answer()).toBe(true);
  const told = await textOf(answer().locator('.sentence'));
  const href = (await answer().getByRole('link').getAttribute('href')) ?? '';
  await page.goto(href);
  await expect.poll(async () => (await textOf(page.locator('.answer .sentence'))).trim()).toBe(told);
});

test('a misread code gets what it may be; keys choose, as in the field of the start page', async () => {
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  await says(verdict()).toMatch(/character again: is it/);
  await expect.poll(() => field().getAttribute('aria-expanded')).toBe('true');
  await field().press('ArrowUp');
  await field().press('ArrowDown');
  await field().press('ArrowDown');
  await field().press('ArrowDown');
  const chosen = page.locator('readback-code-field [aria-selected="true"]');
  await counted(chosen).toBe(1);
  expect(await chosen.getAttribute('id')).toBe(await field().getAttribute('aria-activedescendant'));
  const code = (await textOf(chosen.locator('.code'))).trim();
  await field().press('Enter');
  await says(answer().locator('.code')).toBe(code);
  await expect.poll(() => field().inputValue()).toBe(code);
  await expect.poll(() => field().getAttribute('aria-expanded')).toBe('false');
  await counted(options()).toBe(0);
  // The field keeps the focus; the link is the next stop but one, after the button.
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.waitForURL(`${inject('siteAddress')}profiles/**`);
});

test('one character read wrongly is said, and the right code offered', async () => {
  await field().fill('G6OD-2ZS');
  await counted(options()).toBeGreaterThan(0);
  await says(options().first()).toContain('G60D-2ZS');
  await says(verdict()).not.toBe('');
  await options().first().click();
  await says(answer().locator('.code')).toBe('G60D-2ZS');
});

test('an unknown code is said to be unknown; words are told from codes; Escape empties the field', async () => {
  await field().fill('QQ99-77W');
  await says(verdict()).toMatch(/^No profile known here has this code/);
  await visible(answer()).toBe(false);
  await field().fill('weak bass');
  await says(verdict()).toMatch(/^These are words/);
  await field().press('Escape');
  await expect.poll(() => field().inputValue()).toBe('');
  await says(verdict()).toBe('');
});

test('it asks only the site it comes from, and only for what it needs', async () => {
  const site = new URL(inject('siteAddress'));
  const ofSite = (): string[] =>
    requests.filter(({ origin }) => origin === site.origin).map(({ pathname }) => pathname);
  await page.waitForLoadState('networkidle');
  expect(ofSite()).toEqual(['/help/embed/code-field.js']);
  await field().fill('G60D-2ZS');
  await visible(answer()).toBe(true);
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  // What is asked for at an answer is asked for by now: it is shown when all has come.
  await options().first().click();
  await visible(answer()).toBe(true);
  await nextFrames(page);
  expect(ofSite()).toEqual(['/help/embed/code-field.js', '/help/codes.json', '/help/code-sentences.json']);
  const others = requests.filter(
    ({ origin, protocol }) =>
      protocol !== 'data:' && origin !== site.origin && origin !== new URL(club.address).origin,
  );
  expect(others.map(String)).toEqual([]);
  // Nothing of what was typed goes along.
  expect(requests.map(({ search }) => search).join('')).toBe('');
});

test('it keeps nothing, sets no cookie, and adds no name to the page’s scripts', async () => {
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  await options().first().click();
  await visible(answer()).toBe(true);
  expect(await context.cookies()).toEqual([]);
  const kept = await page.evaluate(async () => [
    localStorage.length,
    sessionStorage.length,
    (await indexedDB.databases()).length,
    (await caches.keys()).length,
    (await navigator.serviceWorker.getRegistrations()).length,
    window.frames.length,
  ]);
  expect(kept).toEqual([0, 0, 0, 0, 0, 0]);
  const names = (): Promise<string[]> => page.evaluate(() => Object.getOwnPropertyNames(window));
  const withField = await names();
  await page.goto(club.bare);
  const without = new Set(await names());
  expect(without.size).toBeGreaterThan(500);
  expect(withField.filter((name) => !without.has(name))).toEqual([]);
});

test('the styles of the page around it do not reach it; its own properties do', async () => {
  const style = () =>
    field().evaluate((input) => {
      const { fontStyle, fontSize, borderBottomColor } = getComputedStyle(input);
      return { fontStyle, size: Number.parseFloat(fontSize), borderBottomColor };
    });
  const before = await style();
  expect(before.fontStyle).toBe('normal');
  expect(before.size).toBeGreaterThan(20);
  await page.locator('readback-code-field').evaluate((element) => {
    if (element instanceof HTMLElement) element.style.setProperty('--readback-spot', 'rgb(1, 2, 3)');
  });
  await expect.poll(async () => (await style()).borderBottomColor).toBe('rgb(1, 2, 3)');
});

test('no violation of WCAG 2.2 AA, contrast of 7:1, in the light and the dark, and targets for gloves', async () => {
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  await field().press('ArrowDown');
  await counted(page.locator('readback-code-field [aria-selected="true"]')).toBe(1);
  expect([...(await axeViolations(page)), ...(await coloursIn(page, 'dark'))]).toEqual([]);
  await field().press('Enter');
  await visible(answer()).toBe(true);
  expect([...(await axeViolations(page)), ...(await coloursIn(page, 'dark'))]).toEqual([]);
  for (const target of [field(), page.getByRole('button', { name: 'Look up' }), answer().getByRole('link')]) {
    expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(48);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

test('under a strict content security policy it works, with this site alone allowed', async () => {
  const { origin } = new URL(inject('siteAddress'));
  const strict = await foreignSite({
    site: inject('siteAddress'),
    headers: {
      'content-security-policy': `default-src 'none'; img-src data:; style-src 'self'; script-src ${origin}; connect-src ${origin}`,
    },
  });
  await page.goto(strict.address);
  await field().fill('G60D-2ZS');
  await visible(answer()).toBe(true);
  expect(await field().evaluate((input) => getComputedStyle(input).fontStyle)).toBe('normal');
  expect(trouble).toEqual([]);
  await strict.close();
});

test('where the list does not come through, that is said, and the plain link is there', async () => {
  const link = page.getByRole('link', { name: 'Look up your code' });
  await visible(link).toBe(false);
  await page.route('**/codes.json', (route) => route.abort());
  await field().fill('G60D-2ZS');
  await says(verdict()).toMatch(/^The list of codes did not come through/);
  await visible(link).toBe(true);
  await page.unroute('**/codes.json');
  await field().fill('G60D-2Z');
  await field().fill('G60D-2ZS');
  await visible(answer()).toBe(true);
  await visible(link).toBe(false);
});

test('one unit’s codes come first where the page names it, under the words it gives', async () => {
  const narrowed = await foreignSite({
    site: inject('siteAddress'),
    attributes: 'unit="glasswick" label="Your code"',
  });
  await page.goto(narrowed.address);
  await page.getByRole('combobox', { name: 'Your code' }).fill('G60D-2ZS');
  await says(verdict()).toMatch(/^This unit has no such code, but another one has/);
  await narrowed.close();
});

test('without scripts the plain link stands in its place', async () => {
  const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
  await plain.goto(club.address);
  const link = plain.getByRole('link', { name: 'Look up your code' });
  expect(await link.isVisible()).toBe(true);
  expect(await link.getAttribute('href')).toBe(inject('siteAddress'));
  await plain.context().close();
});

test('the script takes 15 kB at most, compressed', () => {
  const script = readFileSync(join(inject('siteFolder'), 'embed/code-field.js'));
  expect(script.length).toBeGreaterThan(5000);
  expect(gzipSync(script).length).toBeLessThanOrEqual(15_000);
});

test('the list of codes may be read from any origin, pages may not', async () => {
  const allowed = async (path: string): Promise<string | null> =>
    (await fetch(`${inject('siteAddress')}${path}`)).headers.get('access-control-allow-origin');
  expect(await allowed('codes.json')).toBe('*');
  expect(await allowed('code-sentences.json')).toBe('*');
  expect(await allowed('')).toBe(null);
});
