/** What the scripts of a page weigh: files, workers and what stands within the page, each compressed with gzip. */
import { gzipSync } from 'node:zlib';
import type { Browser, Request } from 'playwright-core';

export interface ScriptBytes {
  /** All that is asked for until what was asked of the page is on the screen, bytes. */
  readonly all: number;
  /** Those the page itself names, and what they import, bytes: loaded before anything is shown by them. */
  readonly first: number;
  /** What is loaded after that: for paper, for instance, bytes. */
  readonly later: number;
}

/** Opens a page anew and waits until nothing more is loaded; with a whole plan, until its equaliser is fitted. */
export async function scriptBytes(browser: Browser, address: string): Promise<ScriptBytes> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    const files = new Map<string, { readonly request: Request; readonly text: Promise<string> }>();
    context.on('response', (response) => {
      const { pathname, href } = new URL(response.url());
      if (pathname.endsWith('.js')) files.set(href, { request: response.request(), text: response.text() });
    });
    await page.addInitScript(noteShown);
    await page.goto(address, { waitUntil: 'networkidle' });
    let shown = Number.POSITIVE_INFINITY;
    if (address.includes('/planner/?')) {
      await page.locator('html[data-shown-at]').waitFor({ state: 'attached', timeout: 120_000 });
      // The card for paper comes last of all.
      await page.locator('#job-card .job-found').first().waitFor({ state: 'attached' });
      shown = Number(await page.locator('html').getAttribute('data-shown-at'));
    }
    const within = await page.locator('script:not([src]):not([type$="json"])').allTextContents();
    const named = await page
      .locator('script[src]')
      .evaluateAll((all) => all.map((one) => (one as HTMLScriptElement).src));
    const texts = new Map<string, string>();
    const late = new Set<string>();
    for (const [href, { request, text }] of files) {
      texts.set(href, await text);
      if (request.timing().startTime > shown) late.add(href);
    }
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
      [...hrefs].reduce((bytes, href) => bytes + gzipped(texts.get(href) ?? ''), 0);
    const inTime = [...texts.keys()].filter((href) => !late.has(href));
    return { all: ofPage + sum(inTime), first: ofPage + sum(first), later: sum(late) };
  } finally {
    await context.close();
  }
}

/** Runs in the page: notes when the equaliser’s settings of a plan are there, milliseconds since 1970. */
function noteShown(): void {
  const look = (): void => {
    if (!document.querySelector('#section-correction')) return;
    watch.disconnect();
    document.documentElement.dataset.shownAt = String(performance.timeOrigin + performance.now());
  };
  const watch = new MutationObserver(look);
  watch.observe(document, { childList: true, subtree: true });
}

function gzipped(text: string): number {
  return gzipSync(text).length;
}
