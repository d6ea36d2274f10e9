/**
 * The content policy in a real browser: nothing of the site needs what it refuses, in the pages, the search
 * (WebAssembly), the planner (a worker) and without a network; and it refuses what it should.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { inlineParts } from '../../src/publish/inline-parts.ts';
import { counted, inTabs, launchBrowser, nextFrames, printed, says, unfold } from './browser.ts';
import { allPages, onePageOfEachKind } from './pages.ts';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let refused: string[];
let requests: string[];

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  refused = [];
  requests = [];
  await context.exposeFunction('tellRefused', (words: string) => refused.push(words));
  await context.addInitScript(() => {
    const { tellRefused } = window as unknown as { tellRefused(words: string): void };
    document.addEventListener('securitypolicyviolation', (event) =>
      tellRefused(`${location.pathname}: ${event.effectiveDirective} ${event.blockedURI} ${event.sample}`),
    );
  });
  context.on('request', (request) => requests.push(request.url()));
  context.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) refused.push(message.text());
  });
  page = await context.newPage();
});
afterEach(() => context.close());

const open = (path: string) => page.goto(`${inject('siteAddress')}${path}`, { waitUntil: 'networkidle' });
const foreign = () => {
  const { origin } = new URL(inject('siteAddress'));
  return requests.filter((url) => !url.startsWith(origin) && !url.startsWith('data:'));
};

test('no page has a style attribute or an event handler, and each has its policy before anything else', () => {
  for (const path of allPages()) {
    const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
    const html = readFileSync(join(inject('siteFolder'), file), 'utf8');
    expect(inlineParts(html).attributes, path).toEqual([]);
    const policy = html.indexOf('<meta http-equiv="Content-Security-Policy" content="default-src');
    expect(policy, path).toBeGreaterThan(0);
    expect(policy, path).toBeLessThan(html.search(/<(?:script|style|link)\b/));
    expect(html, path).not.toMatch(/unsafe-inline|'unsafe-eval'/);
  }
});

test('no kind of page does what its policy refuses, nor asks other sites for anything', async () => {
  await inTabs(context, onePageOfEachKind(), async (tab, { path }) => {
    await tab.goto(`${inject('siteAddress')}${path}`, { waitUntil: 'networkidle' });
    await unfold(tab);
    await printed(tab);
    await nextFrames(tab);
  });
  expect(requests.length).toBeGreaterThan(onePageOfEachKind().length);
  expect(refused).toEqual([]);
  expect(foreign()).toEqual([]);
});

test('the search for codes and for words works under it', async () => {
  await open('');
  await page.getByRole('combobox').fill('8B0S-15Z');
  await counted(page.locator('#code-results li')).toBeGreaterThan(0);
  await page.getByRole('combobox').fill('bass boost');
  await counted(page.locator('#page-results li')).toBeGreaterThan(0);
  expect(requests.some((url) => url.includes('/pagefind/wasm.'))).toBe(true);
  expect(refused).toEqual([]);
  expect(foreign()).toEqual([]);
});

test('the planner with its worker works under it', async () => {
  await open(
    'planner/?unit=brasslight&code=5S1I-B80&amplifier=four-channels-equaliser&front=fairing-coaxial&rear=lid-speaker',
  );
  await page.locator('#section-correction').waitFor({ state: 'attached', timeout: 60_000 });
  expect(requests.some((url) => url.includes('/assets/fit-worker'))).toBe(true);
  expect(refused).toEqual([]);
  expect(foreign()).toEqual([]);
});

test('the walk with its count, the tables and the question for the unit work under it', async () => {
  await open('units/brasslight/way-in/brasslight-two-keys/');
  const screen = page.locator('.walk-screen:visible');
  const begin = (await screen.getAttribute('id')) ?? '';
  await screen.getByRole('link', { name: 'I have read this: go on' }).click();
  await expect.poll(() => screen.getAttribute('id')).not.toBe(begin);
  await screen.getByRole('link', { name: 'I see it' }).click();
  const timer = page.locator('.timer:visible');
  await timer.waitFor();
  const least = await timer.evaluate((one) => getComputedStyle(one).getPropertyValue('--least'));
  expect(Number(/^([\d.]+)%$/.exec(least)?.[1])).toBeGreaterThan(0);
  await open('tables/reflash-towards-what/?behind=aftermarket+amplifier');
  await open('which-unit/?model=Tarrowby');
  await says(page.locator('#which-verdict')).not.toBe('');
  expect(refused).toEqual([]);
  expect(foreign()).toEqual([]);
});

test('a kept page has its policy, its styles and its banner without a network', async () => {
  await open('units/brasslight/');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect
    .poll(() => page.evaluate(async () => (await caches.match(location.href)) !== undefined))
    .toBe(true);
  await context.setOffline(true);
  await page.reload();
  await says(page.locator('.banner')).toContain('No network');
  expect(await page.evaluate(() => getComputedStyle(document.body).margin)).toBe('0px');
  expect(refused).toEqual([]);
});

test('the shop’s colour and the length of a code come through without style attributes', async () => {
  await open('profiles/brasslight/8b0s-i5z/');
  const root = page.locator(':root');
  const spot = await root.evaluate((one) => getComputedStyle(one).getPropertyValue('--spot'));
  expect(spot).toMatch(/^#[0-9a-f]{6}$/i);
  const characters = await page
    .locator('.card-head')
    .evaluate((one) => getComputedStyle(one).getPropertyValue('--characters').trim());
  expect(characters).toBe('8');
});

test('it refuses a script, a handler, a style and a picture that are not of the site', async () => {
  await open('');
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ran = true';
    const image = document.createElement('img');
    image.setAttribute('onerror', 'window.ran = true');
    image.src = 'https://pictures.invalid/a.png';
    const paragraph = document.createElement('p');
    paragraph.setAttribute('style', 'color:red');
    document.body.append(script, image, paragraph);
  });
  for (const directive of ['script-src-elem inline', 'script-src-attr inline', 'style-src-attr', 'img-src']) {
    await expect.poll(() => refused.join('\n')).toContain(`/help/: ${directive}`);
  }
  expect(await page.evaluate(() => 'ran' in window)).toBe(false);
});
