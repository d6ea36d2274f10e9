/**
 * Nothing an entry says is ever run: a site of hostile entries, every page opened with the content policy switched
 * off, so that it is the pages that are sound and not the policy that saves them.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readAnswers } from '../../src/answers.ts';
import { buildSite } from '../../src/publish/build.ts';
import { inlineParts } from '../../src/publish/inline-parts.ts';
import { type Served, serveFolder } from '../../src/publish/serve.ts';
import { HostileContent, shownMark } from '../hostile-content.ts';
import { counted, follow, launchBrowser, nextFrames, says, textOf } from './browser.ts';
import { basePath } from './editions.ts';
import { pagesIn } from './pages.ts';

const work = mkdtempSync(join(tmpdir(), 'readback-hostile-'));
const folder = join(work, 'site');
let hostile: HostileContent;
let served: Served;
let browser: Browser;
let page: Page;
let dialogs: string[];
let foreign: string[];

beforeAll(async () => {
  hostile = await HostileContent.make();
  const { answers } = await readAnswers(hostile.copy.folder);
  const { headers, folders } = await buildSite({
    answers,
    outDir: folder,
    basePath,
    date: '2026-03-01',
    log: () => {},
  });
  served = await serveFolder({ folder, basePath, host: '127.0.0.1', port: 0, folders, headers });
  browser = await launchBrowser();
  const context = await browser.newContext({ bypassCSP: true, serviceWorkers: 'block' });
  page = await context.newPage();
  dialogs = [];
  foreign = [];
  page.on('dialog', (dialog) => {
    dialogs.push(dialog.message());
    void dialog.dismiss();
  });
  page.on('request', (request) => {
    if (!/^(?:data:|blob:)/.test(request.url()) && !request.url().startsWith(new URL(served.address).origin))
      foreign.push(request.url());
  });
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await hostile?.copy.remove();
  rmSync(work, { recursive: true, force: true });
});

/** Looks for what a browser made of the page that is no text: what is found is empty where all is well. */
function look() {
  const found = [...document.querySelectorAll('*')].flatMap((element) =>
    [...element.attributes]
      .filter(
        ({ name, value }) =>
          name.startsWith('on') ||
          (['href', 'src', 'action', 'formaction', 'data', 'xlink:href'].includes(name) &&
            /^\s*(?:javascript|vbscript|data):/i.test(value)),
      )
      .map(({ name, value }) => `${element.tagName} ${name}=${value.slice(0, 60)}`),
  );
  for (const tag of ['iframe', 'base', 'object', 'embed', 'img']) {
    for (const element of document.querySelectorAll(`${tag}`)) found.push(element.outerHTML.slice(0, 80));
  }
  if ('ran' in window) found.push('something of an entry was run');
  const [shopName, main] = ['.shop-name', 'main'].map(
    (place) => document.querySelector(place)?.textContent ?? '',
  );
  return { found, shopName, main, title: document.title };
}

async function trouble(): Promise<string[]> {
  // What a script has made may run late, such as the handler of a picture that does not load; but that is there to see.
  await nextFrames(page);
  return (await page.evaluate(look)).found;
}

test('every free text of every kind of entry is hostile', () => {
  expect(hostile.missed).toEqual([]);
});

test('no page runs any of it or turns it into more than text, and most show it', async () => {
  const found: string[] = [];
  let shown = 0;
  const pages = pagesIn(folder);
  for (const path of pages) {
    // Loaded are pictures and frames, too, or they have failed to.
    await page.goto(`${served.address}${path}`);
    const seen = await page.evaluate(look);
    found.push(...seen.found.map((words) => `${path}: ${words}`));
    // Of the shop's name, above every page.
    expect(seen.shopName, path).toContain(shownMark);
    if (seen.main?.includes(shownMark)) shown += 1;
    if (path === '') expect(seen.title).toContain(shownMark);
  }
  expect(found).toEqual([]);
  expect(dialogs).toEqual([]);
  expect(foreign).toEqual([]);
  expect(pages.length).toBeGreaterThan(100);
  expect(shown).toBeGreaterThan(pages.length / 2);
});

test('scripts and styles within the pages are those of a harmless site', async () => {
  const digests = (html: string) => {
    const { scripts, styles, attributes } = inlineParts(html);
    expect(attributes).toEqual([]);
    return [...scripts, ...styles].join('');
  };
  for (const path of pagesIn(folder)) {
    const html = readFileSync(
      join(folder, path.endsWith('/') || path === '' ? `${path}index.html` : path),
      'utf8',
    );
    expect(digests(html), path).not.toMatch(/window\.ran|ran=1/);
  }
});

test('nor does anything a script makes of it: lookup, recent codes, search, planner, walk, tables, units', async () => {
  await page.goto(served.address);
  const field = page.locator('#code-field');
  await field.fill('8B0S');
  await counted(page.locator('#code-results li')).toBeGreaterThan(0);
  expect(await trouble()).toEqual([]);
  const before = await textOf(page.locator('#code-verdict'));
  await field.fill('<img src=x onerror=ran=1>');
  await says(page.locator('#code-verdict')).not.toBe(before);
  expect(await trouble()).toEqual([]);
  await field.fill('window ran');
  await counted(page.locator('#page-results li')).toBeGreaterThan(0);
  await says(page.locator('#page-results')).toContain('window.ran');
  expect(await trouble()).toEqual([]);
  await field.fill('8B0S-I5Z');
  await follow(page.locator('#code-results li').first(), /\/profiles\//);
  await page.goto(served.address);
  await page.locator('#recent-codes li').first().waitFor();
  expect(await trouble()).toEqual([]);

  await page.goto(
    `${served.address}?code=${encodeURIComponent('"><img src=x onerror=ran=1>')}&unit=%3Cscript%3E`,
  );
  await says(page.locator('#code-verdict')).not.toBe('');
  expect(await trouble()).toEqual([]);

  const code = await profileCode();
  const plan = { unit: 'brasslight', code, amplifier: 'four-channels-equaliser', front: 'fairing-coaxial' };
  await page.goto(`${served.address}planner/?${new URLSearchParams(plan)}`);
  await page.locator('.plan-line').first().waitFor({ state: 'attached' });
  expect(await trouble()).toEqual([]);

  for (const path of pagesIn(folder).filter((one) => /^units\/.+\/way-in\/.+\/$/.test(one))) {
    await page.goto(`${served.address}${path}`);
    const screens = await page.locator('.walk-screen').evaluateAll((all) => all.map(({ id }) => id));
    expect(screens.length, path).toBeGreaterThan(2);
    for (const id of screens) {
      await page.evaluate((hash) => {
        location.hash = hash;
      }, id);
      await page.locator(`#${id}:visible`).waitFor();
    }
    expect(await trouble(), path).toEqual([]);
  }
  for (const path of pagesIn(folder).filter((one) => /^tables\/.+\/$/.test(one))) {
    await page.goto(`${served.address}${path}`);
    for (const choice of await page.locator('main form select').all()) {
      await choice.selectOption({ index: (await choice.locator('option').count()) - 1 });
    }
    expect(await trouble(), path).toEqual([]);
  }
  await page.goto(`${served.address}which-unit/`);
  await page.locator('#which-model').selectOption({ index: 1 });
  await says(page.locator('#which-verdict')).not.toBe('');
  expect(await trouble()).toEqual([]);
  expect(dialogs).toEqual([]);
  expect(foreign).toEqual([]);
});

/** The hostile code of a profile, as the planner's own list says it. */
async function profileCode(): Promise<string> {
  await page.goto(`${served.address}profiles/brasslight/5s1i-b80/`);
  const code = await textOf(page.getByRole('heading', { level: 1 }));
  expect(code).toContain('<img src=x');
  return code.trim();
}
