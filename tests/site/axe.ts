/** WCAG 2.2 AA by axe-core, and beyond it contrast of 7:1 and the size of targets. */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe-core finds on the page as it stands. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: axePath });
  const results = await page.evaluate((runTags) => {
    const { axe } = window as unknown as { axe: { run(options: unknown): Promise<AxeResults> } };
    return axe.run({
      runOnly: { type: 'tag', values: runTags },
      rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
    });
  }, tags);
  // A run that looked at nothing would pass everything.
  expect(results.passes.length).toBeGreaterThan(10);
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      (node) => `${id}: ${node.html.slice(0, 160)} (${node.any[0]?.message ?? node.all[0]?.message ?? ''})`,
    ),
  );
}
