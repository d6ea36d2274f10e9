/** What the scripts of a page weigh: files, workers and what stands within the page, each compressed with gzip. */
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';

export interface ScriptBytes {
  /** All there is once the page is finished, bytes. */
  readonly all: number;
  /** Those the page itself names, and what they import, bytes: loaded before anything is shown by them. */
  readonly first: number;
}

/** Opens a page anew and waits until nothing more is loaded; with a whole plan, until its equaliser is fitted. */
export async function scriptBytes(browser: Browser, address: string): Promise<ScriptBytes> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    const files = new Map<string, Promise<string>>();
    context.on('response', (response) => {
      const { pathname, href } = new URL(response.url());
      if (pathname.endsWith('.js')) files.set(href, response.text());
    });
    await page.goto(address, { waitUntil: 'networkidle' });
    if (address.includes('/planner/?')) {
      await page.locator('#section-correction').waitFor({ state: 'attached', timeout: 120_000 });
    }
    const within = await page.locator('script:not([src]):not([type$="json"])').allTextContents();
    const named = await page
      .locator('script[src]')
      .evaluateAll((all) => all.map((one) => (one as HTMLScriptElement).src));
    const texts = new Map<string, string>();
    for (const [href, text] of files) texts.set(href, await text);
    const first = new Set<string>();
    const follow = (href: string): void => {
      if (first.has(href)) return;
      first.add(href);
      const imports = (texts.get(href) ?? '').matchAll(/(?:from|import)\s*["'`](\.\/[^"'`]+\.js)["'`]/g);
      for (const [, path = ''] of imports) follow(new URL(path, href).href);
    };
    for (const href of named) follow(href);
    const ofPage = within.reduce((sum, text) => sum + gzipped(text), 0);
    const sum = (hrefs: Iterable<string>): number =>
      [...hrefs].reduce((bytes, href) => bytes + gzipped(texts.get(href) ?? ''), ofPage);
    return { all: sum(texts.keys()), first: sum(first) };
  } finally {
    await context.close();
  }
}

function gzipped(text: string): number {
  return gzipSync(text).length;
}
