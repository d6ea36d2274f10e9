/** A real browser for the tests: an installed Chrome or Chromium, else the one that comes as a package. */
import { existsSync } from 'node:fs';
import bundled from '@sparticuz/chromium';
import { type Browser, type BrowserContext, chromium, type Locator, type Page } from 'playwright-core';
import { expect } from 'vitest';

const usualPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** Starts a browser without a window, with `more` arguments. CHROME_PATH names one that is to be used instead. */
export async function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const { CHROME_PATH: named } = process.env;
  const installed = named ?? usualPaths.find((path) => existsSync(path));
  if (installed) return chromium.launch({ executablePath: installed, args: [...more] });
  // Its own list of arguments is for one page in one process, and turns off the rules about origins.
  return chromium.launch({
    executablePath: await bundled.executablePath(),
    args: ['--disable-gpu', ...more],
  });
}

/** The text of an element, as one string. Of a page at work it is asked with {@link says}. */
export async function textOf(locator: Locator): Promise<string> {
  return (await locator.textContent()) ?? '';
}

/** Asks for the text of an element until it is as wanted: `await says(verdict).toBe('…')`. */
export const says = (locator: Locator) => expect.poll(() => textOf(locator));

/** Counts elements until there are as many as wanted: `await counted(rows).toBe(9)`. */
export const counted = (locator: Locator) => expect.poll(() => locator.count());

/** Asks whether an element is to be seen until it is as wanted. */
export const visible = (locator: Locator) => expect.poll(() => locator.isVisible());

/** Asks for the fragment, query or path of a page's address until it is as wanted. */
export const addressOf = (page: Page, part: 'hash' | 'search' | 'pathname') =>
  expect.poll(() => new URL(page.url())[part]);

/** Presses what leads elsewhere, and waits until that is loaded. `to` is an address, or what it ends in. */
export async function follow(link: Locator, to: string | RegExp): Promise<void> {
  const end = typeof to === 'string' ? (url: URL) => url.href.endsWith(to) : to;
  await link.click();
  await link.page().waitForURL(end);
}

/** Does something with each of `things` on a page of its own, four pages at a time: one that waits holds up no other. */
export async function inTabs<Thing, Result>(
  context: BrowserContext,
  things: readonly Thing[],
  work: (page: Page, thing: Thing) => Promise<Result>,
): Promise<Result[]> {
  const results: Result[] = [];
  const waiting = [...things.entries()];
  const tab = async (): Promise<void> => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [at, thing] = next;
      const page = await context.newPage();
      results[at] = await work(page, thing);
      await page.close();
    }
  };
  await Promise.all([tab(), tab(), tab(), tab()]);
  return results;
}

/** Unfolds all there is to unfold, and waits until the page has answered to that. */
export function unfold(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const folded = [...document.querySelectorAll<HTMLDetailsElement>('details:not([open])')];
    const answered = folded.map(
      (one) => new Promise((done) => one.addEventListener('toggle', done, { once: true })),
    );
    for (const one of folded) one.open = true;
    await Promise.all(answered);
  });
}

/** Has the page laid out as it is printed. */
export async function printed(page: Page): Promise<void> {
  await page.emulateMedia({ media: 'print' });
  await expect.poll(() => page.evaluate(() => window.matchMedia('print').matches)).toBe(true);
}

/** Waits until the page has shown what it does next: two frames, and what was to be done before them. */
export function nextFrames(page: Page): Promise<void> {
  return page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));
      }),
  );
}
