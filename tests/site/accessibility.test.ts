/**
 * Each kind of page held to WCAG 2.2 AA by axe-core, on a phone and on a wide screen, in the light and in the dark;
 * beyond it, contrast of 7:1 (WCAG 2.2, 1.4.6) for reading in sunlight, and targets large enough for gloves.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { axeViolations, coloursIn } from './axe.ts';
import { counted, launchBrowser, unfold } from './browser.ts';
import { onePageOfEachKind } from './pages.ts';

const views = [
  { name: '390 px', width: 390, height: 844, colorScheme: 'light', other: 'dark' },
  { name: '1280 px', width: 1280, height: 900, colorScheme: 'dark', other: 'light' },
] as const;

/** Kinds of pages whose wide layout is another than the narrow one. */
const laidOutByWidth = new Set([
  'start',
  'unit',
  'way in',
  'profile',
  'planner',
  'table',
  'coverage',
  'readings',
]);

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

for (const { name, width, height, colorScheme, other } of views) {
  describe(name, () => {
    let page: Page;
    beforeAll(async () => {
      const context = await browser.newContext({
        viewport: { width, height },
        colorScheme,
        serviceWorkers: 'block',
      });
      page = await context.newPage();
    });
    afterAll(() => page.context().close());

    test('no kind of page has a violation', async () => {
      const found: string[] = [];
      // Lists and prose are laid out alike at every width.
      const kinds = onePageOfEachKind().filter(({ kind }) => width === 390 || laidOutByWidth.has(kind));
      for (const { kind, path } of kinds) {
        await page.goto(`${inject('siteAddress')}${path}`);
        // What the planner says first comes with its data.
        if (kind === 'planner') await page.locator('#plan-status:not(:empty)').waitFor();
        await unfold(page);
        const here = await axeViolations(page);
        // What is wide has the colours of what is narrow: the other scheme is looked at once.
        if (width === 390) here.push(...(await coloursIn(page, other)));
        found.push(...here.map((violation) => `${kind} (${path}) ${violation}`));
      }
      expect(found).toEqual([]);
    });

    test('nor has the code field with results beneath it', async () => {
      await page.goto(inject('siteAddress'));
      await page.getByRole('combobox', { name: 'Code on your screen' }).fill('8B0S-15Z');
      const options = page.locator('#code-results').getByRole('option');
      await counted(options).toBeGreaterThan(1);
      await page.getByRole('combobox', { name: 'Code on your screen' }).press('ArrowDown');
      await expect.poll(() => options.first().getAttribute('aria-selected')).toBe('true');
      expect([...(await axeViolations(page)), ...(await coloursIn(page, other))]).toEqual([]);
    });
  });
}

test('what a glove has to hit is at least 48 px high', async () => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const small: string[] = [];
  for (const path of [
    '',
    'which-unit/?model=Tarrowby',
    'units/brasslight/',
    'units/northpane/',
    'profiles/brasslight/8b0s-i5z/',
    'tables/',
    'coverage/',
    'coverage/bench-sheet/',
    'units/brasslight/sheet/',
    'tables/reflash-towards-what/?behind=aftermarket+amplifier',
  ]) {
    await page.goto(`${inject('siteAddress')}${path}`);
    const targets = page.locator(
      'input, select, button, summary, .row-link, .unit-ways a, .big, .button, .code-link, .by-unit a, .rule-links a, .rule-number, .table-answers h3 a, .masthead a, .places a, .crumbs a, .imprint a, .coverage-units a, .row-codes a, .wanted a, .bench-block a, .qr-label-name a',
    );
    const sizes = await targets.evaluateAll((all) =>
      all.map((one) => ({ text: one.textContent, height: one.getBoundingClientRect().height })),
    );
    for (const { text, height } of sizes)
      if (height > 0 && height < 48) small.push(`${path} ${text} ${height}`);
    // Of what is laid out: a fold has targets that are not.
    expect(sizes.filter(({ height }) => height > 0).length, path).toBeGreaterThan(5);
  }
  expect(small).toEqual([]);
  await page.goto(inject('siteAddress'));
  const field = await page.getByRole('combobox', { name: 'Code on your screen' }).boundingBox();
  expect(field?.height).toBeGreaterThanOrEqual(56);
  await context.close();
});
