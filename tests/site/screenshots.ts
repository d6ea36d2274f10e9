/** The pictures of the README, taken of the demo while `npm start` serves it: `npm run screenshots`. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { launchBrowser } from './browser.ts';

const address = process.argv[2] ?? 'http://127.0.0.1:8047/';
const folder = fileURLToPath(new URL('../../.github/screenshots/', import.meta.url));

interface Picture {
  readonly name: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  /** Brings what is to be seen onto the page. */
  readonly prepare: (page: Page) => Promise<void>;
}

const pictures: readonly Picture[] = [
  {
    name: 'lookup',
    path: '',
    width: 390,
    height: 820,
    prepare: async (page) => {
      await page.getByRole('combobox').fill('8BOS-I5Z');
      await page.locator('#code-results li').nth(1).waitFor();
    },
  },
  {
    name: 'profile',
    path: 'profiles/brasslight/8b0s-i5z/',
    width: 1280,
    height: 900,
    prepare: (page) => page.locator('.figures').waitFor(),
  },
  {
    name: 'planner',
    path: 'planner/?unit=glasswick&code=0x2F6&amplifier=four-channels-equaliser&front=fairing-coaxial&rear=lid-speaker',
    width: 1280,
    height: 900,
    prepare: (page) => page.locator('.plan-sentence').waitFor(),
  },
];

mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
for (const { name, path, width, height, prepare } of pictures) {
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: width < 500 ? 2 : 1.5,
    colorScheme: 'light',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto(`${address}${path}`);
  await prepare(page);
  await sharp(await page.screenshot())
    .webp({ nearLossless: true, quality: 40, effort: 6 })
    .toFile(`${folder}${name}.webp`);
  await context.close();
}
await browser.close();
