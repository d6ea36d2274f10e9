/** The QR codes of the built site, read from its files and from what the browser prints. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { readQr } from '../plot/qr-decoder.ts';
import { modulesOf, svgOf } from '../plot/qr-picture.ts';
import { launchBrowser, printed, textOf } from './browser.ts';
import { basePath } from './editions.ts';
import { allPages } from './pages.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The address of content/site.yaml, with the base path the test site is built for. */
const published = `https://help.quillhaven.example${basePath}`;

async function codesOn(path: string): Promise<{ read: string; shown: string }[]> {
  const html = readFileSync(join(inject('siteFolder'), path, 'index.html'), 'utf8');
  const figures = [...html.matchAll(/<figure class="qr".*?<\/figure>/gs)].map(([figure]) => figure);
  return Promise.all(
    figures.map(async (figure) => {
      const size = Number(/viewBox="0 0 (\d+) \1"/.exec(figure)?.[1]);
      const drawing = /<path d="([^"]+)"/.exec(figure)?.[1] ?? '';
      const caption = /<figcaption[^>]*>(.*?)<\/figcaption>/s.exec(figure)?.[1] ?? '';
      const shown = caption.replaceAll('<wbr>', '').trim();
      return { read: readQr(await modulesOf(svgOf({ size, path: drawing }, 3), size)).text, shown };
    }),
  );
}

test('every unit and every profile has the code of its own published address', async () => {
  const pages = allPages().filter((path) => /^units\/[^/]+\/$|^profiles\/[^/]+\/[^/]+\/$/.test(path));
  expect(pages.length).toBeGreaterThan(20);
  for (const path of pages) {
    const address = `${published}${path}`;
    expect(await codesOn(path), path).toEqual([{ read: address, shown: address }]);
  }
});

test('the sheet of a unit has the unit and each of its profiles, once', async () => {
  const sheets = allPages().filter((path) => /^units\/[^/]+\/sheet\/$/.test(path));
  const units = allPages().filter((path) => /^units\/[^/]+\/$/.test(path));
  expect(sheets.length).toBe(units.length);
  for (const sheet of sheets) {
    const unit = sheet.replace(/sheet\/$/, '');
    const profiles = allPages().filter((path) =>
      new RegExp(`^${unit.replace('units', 'profiles')}[^/]+/$`).test(path),
    );
    const codes = await codesOn(sheet);
    expect(codes.map(({ read }) => read).sort()).toEqual(
      [unit, ...profiles].map((path) => `${published}${path}`).sort(),
    );
    expect(codes.map(({ shown }) => shown)).toEqual(codes.map(({ read }) => read));
  }
});

test('as printed from a dark screen it is black on white, and read again', async () => {
  const page = await (await browser.newContext({ colorScheme: 'dark', serviceWorkers: 'block' })).newPage();
  for (const path of ['units/brasslight/', 'profiles/brasslight/8b0s-i5z/', 'units/brasslight/sheet/']) {
    await page.goto(`${inject('siteAddress')}${path}`);
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media, colorScheme: 'dark' });
      await expect.poll(() => page.evaluate((name) => window.matchMedia(name).matches, media)).toBe(true);
      const code = page.locator('.qr svg').first();
      const size = Number((await code.getAttribute('viewBox'))?.split(' ')[2]);
      // Large enough for the camera of the test, which sees 96 dots an inch.
      await code.evaluate((svg) => {
        if (svg instanceof SVGElement)
          svg.style.cssText = 'position:fixed;inset:0;width:450px;height:450px;z-index:9';
      });
      const { text } = readQr(await modulesOf(await code.screenshot(), size));
      expect(text, `${path} ${media}`).toContain(published);
    }
  }
  await page.context().close();
});

for (const { format, widthMm, heightMm } of [
  { format: 'A4', widthMm: 210, heightMm: 297 },
  { format: 'Letter', widthMm: 216, heightMm: 279 },
] as const) {
  test(`on ${format} no label of a sheet is cut, each code is 30 mm or more, and the address can be read`, async () => {
    const dots = 96 / 25.4;
    const width = Math.floor((widthMm - 24) * dots);
    const page = await (
      await browser.newContext({ viewport: { width, height: Math.floor((heightMm - 24) * dots) } })
    ).newPage();
    await page.goto(`${inject('siteAddress')}units/brasslight/sheet/`);
    await printed(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const labels = page.locator('.qr-labels > li');
    expect(await labels.count()).toBeGreaterThan(5);
    for (const label of await labels.all()) {
      const [box, code] = [await label.boundingBox(), await label.locator('svg').boundingBox()];
      expect(code?.width).toBeGreaterThanOrEqual(30 * dots);
      const overflow = await label.evaluate((one) => one.scrollHeight - one.clientHeight);
      expect(overflow, await textOf(label)).toBeLessThanOrEqual(1);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width + 1);
    }
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
    await page.context().close();
  });
}
