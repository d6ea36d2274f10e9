/**
 * Each kind of page held to WCAG 2.2 AA by axe-core, on a phone and on a wide screen, in the light and in the dark;
 * beyond it, contrast of 7:1 (WCAG 2.2, 1.4.6) for reading in sunlight, and targets large enough for gloves.
 */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launchBrowser, textOf } from './browser.ts';
import { onePageOfEachKind } from './pages.ts';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const views = [
  { name: '390 px', width: 390, height: 844, colorScheme: 'light', other: 'dark' },
  { name: '1280 px', width: 1280, height: 900, colorScheme: 'dark', other: 'light' },
] as const;
/** What may differ between light and dark. */
const colourRules = ['color-contrast', 'color-contrast-enhanced', 'link-in-text-block'];

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** What all rules find, and then what those of colour find in the other scheme. */
async function violations(page: Page, other: 'light' | 'dark'): Promise<string[]> {
  await page.addScriptTag({ path: axePath });
  const all = await run(page, {
    runOnly: { type: 'tag', values: tags },
    rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
  });
  // A run that looked at nothing would pass everything.
  expect(all.passes.length).toBeGreaterThan(10);
  const background = (): Promise<string> =>
    page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const before = await background();
  await page.emulateMedia({ colorScheme: other });
  expect(await background()).not.toBe(before);
  const coloured = await run(page, { runOnly: { type: 'rule', values: colourRules } });
  expect(coloured.passes.map(({ id }) => id)).toContain('color-contrast');
  await page.emulateMedia({ colorScheme: other === 'light' ? 'dark' : 'light' });
  return [...told(all), ...told(coloured).map((one) => `${other}: ${one}`)];
}

function run(page: Page, options: unknown): Promise<AxeResults> {
  return page.evaluate((runOptions) => {
    const { axe } = window as unknown as { axe: { run(options: unknown): Promise<AxeResults> } };
    return axe.run(runOptions);
  }, options);
}

function told(results: AxeResults): string[] {
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      (node) => `${id}: ${node.html.slice(0, 160)} (${node.any[0]?.message ?? node.all[0]?.message ?? ''})`,
    ),
  );
}

for (const { name, width, height, colorScheme, other } of views) {
  describe(name, () => {
    let page: Page;
    beforeAll(async () => {
      page = await (await browser.newContext({ viewport: { width, height }, colorScheme })).newPage();
    });
    afterAll(() => page.context().close());

    test('no kind of page has a violation', async () => {
      const found: string[] = [];
      for (const { kind, path } of onePageOfEachKind()) {
        await page.goto(`${inject('siteAddress')}${path}`);
        await page.evaluate(() => {
          for (const details of document.querySelectorAll('details')) details.open = true;
        });
        found.push(...(await violations(page, other)).map((violation) => `${kind} (${path}) ${violation}`));
      }
      expect(found).toEqual([]);
    });

    test('nor has the code field with results beneath it', async () => {
      await page.goto(inject('siteAddress'));
      await page.getByRole('combobox', { name: 'Code on your screen' }).fill('8B0S-15Z');
      await expect.poll(() => page.locator('#code-results').getByRole('option').count()).toBeGreaterThan(1);
      await page.getByRole('combobox', { name: 'Code on your screen' }).press('ArrowDown');
      expect(await violations(page, other)).toEqual([]);
    });
  });
}

test('what a glove has to hit is at least 48 px high', async () => {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
  const small: string[] = [];
  for (const path of [
    '',
    'which-unit/?model=Tarrowby',
    'units/brasslight/',
    'profiles/brasslight/8b0s-i5z/',
  ]) {
    await page.goto(`${inject('siteAddress')}${path}`);
    const targets = page.locator(
      'input, select, button, summary, .row-link, .button, .code-link, .masthead a, .places a, .crumbs a',
    );
    for (const target of await targets.all()) {
      const box = await target.boundingBox();
      if (box && box.height > 0 && box.height < 48)
        small.push(`${path} ${await textOf(target)} ${box.height}`);
    }
    expect(await targets.count()).toBeGreaterThan(5);
  }
  expect(small).toEqual([]);
  const field = await (async () => {
    await page.goto(inject('siteAddress'));
    return page.getByRole('combobox', { name: 'Code on your screen' }).boundingBox();
  })();
  expect(field?.height).toBeGreaterThanOrEqual(56);
  await page.context().close();
});
