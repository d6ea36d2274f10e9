/** WCAG 2.2 AA by axe-core, and beyond it contrast of 7:1 and the size of targets. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What may differ between light and dark. Contrast of 7:1 is asked for, which has the 4.5:1 of WCAG AA in it. */
const colourRules = ['color-contrast-enhanced', 'link-in-text-block'];

/** What axe-core finds on the page as it stands. */
export async function axeViolations(page: Page): Promise<string[]> {
  // Not as a script of the page: its content policy would refuse that.
  await page.evaluate(await readFile(axePath, 'utf8'));
  const results = await run(page, {
    runOnly: { type: 'tag', values: tags },
    rules: {
      'target-size': { enabled: true },
      'color-contrast': { enabled: false },
      'color-contrast-enhanced': { enabled: true },
    },
  });
  // A run that looked at nothing would pass everything.
  expect(results.passes.length).toBeGreaterThan(10);
  return told(results);
}

/** What the rules of colour find in the scheme the page is not in; to be asked after {@link axeViolations}. */
export async function coloursIn(page: Page, scheme: 'light' | 'dark'): Promise<string[]> {
  const background = (): Promise<string> =>
    page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const before = await background();
  await page.emulateMedia({ colorScheme: scheme });
  await expect.poll(background).not.toBe(before);
  const results = await run(page, { runOnly: { type: 'rule', values: colourRules } });
  expect(results.passes.map(({ id }) => id)).toContain('color-contrast-enhanced');
  await page.emulateMedia({ colorScheme: scheme === 'light' ? 'dark' : 'light' });
  await expect.poll(background).toBe(before);
  return told(results).map((one) => `${scheme}: ${one}`);
}

function run(page: Page, options: object): Promise<AxeResults> {
  // What passes is told by one element a rule: all of them would take as long again to be described.
  const brief = { ...options, resultTypes: ['violations'] };
  return page.evaluate((runOptions) => {
    const { axe } = window as unknown as { axe: { run(options: unknown): Promise<AxeResults> } };
    return axe.run(runOptions);
  }, brief);
}

function told(results: AxeResults): string[] {
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      (node) => `${id}: ${node.html.slice(0, 160)} (${node.any[0]?.message ?? node.all[0]?.message ?? ''})`,
    ),
  );
}
