/** The code field in a real browser: the main road of a rider with a code. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { counted, follow, launchBrowser, says } from './browser.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  await page?.context().close();
  // What the field does by itself; with the worker, which answers from what it keeps, see offline.test.ts.
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  page = await context.newPage();
  await page.goto(inject('siteAddress'));
});

const field = () => page.getByRole('combobox', { name: 'Code on your screen' });
const options = () => page.locator('#code-results').getByRole('option');
const verdict = () => says(page.getByRole('status'));
const attribute = (name: string) => expect.poll(() => field().getAttribute(name));

test('a code as it stands on the screen leads to its page', async () => {
  await field().fill('G60D-2ZS');
  await counted(options()).toBe(1);
  await says(options().first()).toContain('G60D-2ZS');
  await says(options().first()).toContain('Brasslight');
  await says(options().first()).toMatch(/Clean up to step \d+ of 30: [\d.]+\sV/);
  await follow(options().first(), '/help/profiles/brasslight/g60d-2zs/');
  await says(page.getByRole('heading', { level: 1 })).toBe('G60D-2ZS');
});

test('a code typed without separators and in lower case is the same code', async () => {
  await field().fill('g60d2zs');
  await verdict().toBe('This is G60D-2ZS.');
  await says(options().first()).toContain('G60D-2ZS');
});

test('a misread code finds the one that was meant, and says where it differs', async () => {
  // O read for 0, S for 5 and the like: the pairs every OCR table has.
  await field().fill('G6OD-2ZS');
  await counted(options()).toBeGreaterThan(0);
  await says(options().first()).toMatch(/G60D-2ZS.*third character/is);
});

test('two codes that look alike are never decided for the rider', async () => {
  await field().fill('8B0S-15Z');
  await verdict().toMatch(/^Look at the sixth character again/);
  const shown = (await options().allTextContents()).join('\n');
  expect(shown).toContain('8B0S-15Z');
  expect(shown).toContain('8B0S-I5Z');
});

test('a code nobody knows is said to be unknown, with what to do', async () => {
  await field().fill('QQ99-77W');
  await verdict().toMatch(/^No profile known here has this code\. Read it once more/);
});

test('words find pages through the search', async () => {
  await field().fill('bridged outputs ground');
  await counted(page.locator('#page-results a')).toBeGreaterThan(0);
  await counted(options()).toBe(0);
  const link = page.locator('#page-results a').first();
  const address = (await link.getAttribute('href')) ?? '';
  expect(address).toMatch(/^\/help\//);
  await follow(link, address);
  await says(page.locator('main')).toMatch(/ground/i);
});

test('words that no page speaks of are said to be found nowhere', async () => {
  await field().fill('xylophone zeppelin');
  await verdict().toMatch(/^No page speaks of “xylophone zeppelin”/);
});

// WAI-ARIA Authoring Practices, combobox pattern, editable with list autocomplete: keyboard interaction.
test('arrow keys, Enter and Escape work as in the combobox pattern', async () => {
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  await attribute('aria-expanded').toBe('true');
  await field().press('ArrowDown');
  await field().press('ArrowDown');
  await attribute('aria-activedescendant').toBe(await options().nth(1).getAttribute('id'));
  const selected = () => options().evaluateAll((all) => all.map((one) => one.getAttribute('aria-selected')));
  expect((await selected()).slice(0, 2)).toEqual(['false', 'true']);
  await field().press('ArrowUp');
  await attribute('aria-activedescendant').toBe(await options().nth(0).getAttribute('id'));
  await field().press('Escape');
  await attribute('aria-activedescendant').toBeNull();
  await field().press('ArrowUp');
  await attribute('aria-activedescendant').toBe(await options().last().getAttribute('id'));
  await field().press('ArrowDown');
  await field().press('ArrowDown');
  await field().press('Enter');
  await page.waitForURL('**/help/profiles/brasslight/8b0s-15z/');
});

test('Escape empties the field and takes the results away', async () => {
  await field().fill('8B0S-15Z');
  await counted(options()).toBeGreaterThan(1);
  await field().press('Escape');
  await expect.poll(() => field().inputValue()).toBe('');
  await counted(options()).toBe(0);
  await attribute('aria-expanded').toBe('false');
});

test('the code is kept in the address and read from it', async () => {
  await field().fill('G60D-2ZS');
  await expect.poll(() => new URL(page.url()).searchParams.get('code')).toBe('G60D-2ZS');
  await page.goto(`${inject('siteAddress')}?code=1.10`);
  expect(await field().inputValue()).toBe('1.10');
  await expect.poll(async () => (await options().allTextContents()).join('\n')).toContain('1.10');
});

test('neither the list of codes nor the search is fetched before the field is used', async () => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  await page.reload({ waitUntil: 'networkidle' });
  const early = fetched.filter((path) => /codes\.json|pagefind/.test(path));
  expect(early).toEqual([]);
  await field().focus();
  await expect.poll(() => fetched.filter((path) => /codes\.json/.test(path)).length).toBe(1);
});

test('a lost signal is said, and the next key tries again', async () => {
  await page.route('**/codes.json?*', (route) => route.abort());
  await field().fill('G60D-2ZS');
  await verdict().toMatch(/^The list of codes did not come through/);
  await page.unroute('**/codes.json?*');
  await field().press('End');
  await field().pressSequentially(' ');
  await field().fill('G60D-2ZS');
  await counted(options()).toBe(1);
});
