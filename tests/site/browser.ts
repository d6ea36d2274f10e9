/** A real browser for the tests: an installed Chrome or Chromium, else the one that comes as a package. */
import { existsSync } from 'node:fs';
import bundled from '@sparticuz/chromium';
import { type Browser, chromium, type Locator } from 'playwright-core';

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

/** The text of an element, as one string. */
export async function textOf(locator: Locator): Promise<string> {
  return (await locator.textContent()) ?? '';
}
