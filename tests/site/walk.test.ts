/** The guided walk in a real browser: its answers, counts, keys, memory, paper, and without scripts. */
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest';
import { axeViolations } from './axe.ts';
import {
  addressOf,
  counted,
  follow,
  launchBrowser,
  printed,
  says,
  textOf,
  unfold,
  visible,
} from './browser.ts';
import { pagesOfLanguage } from './pages.ts';

const twoKeys = 'units/brasslight/way-in/brasslight-two-keys/';

let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

async function open(path: string, options: Parameters<Browser['newContext']>[0] = {}): Promise<void> {
  await context?.close();
  const viewport = { width: 390, height: 844 };
  context = await browser.newContext({ viewport, serviceWorkers: 'block', ...options });
  page = await context.newPage();
  await page.clock.install({ time: begin });
  await page.goto(`${inject('siteAddress')}${path}`);
  // From here on time passes only where a test lets it: a busy machine counts no faster.
  await page.clock.pauseAt(begin + 60_000);
}

/** When the clock of a page begins, milliseconds since 1970. */
const begin = Date.UTC(2026, 2, 14);

const screen = (): Locator => page.locator('.walk-screen:visible');
const heading = () => says(screen().getByRole('heading', { level: 2 }));
const progress = () => says(screen().locator('.walk-progress'));
const told = () => says(page.locator('.walk [data-live]'));
const seen = () => says(screen().locator('.walk-seen'));

/** The address changes before the page does: wait for the screen itself. */
async function arrive(id: string): Promise<void> {
  await expect.poll(() => page.locator('.walk-screen:not([hidden])').getAttribute('id')).toBe(id);
}

/** Follows an answer by its words. */
async function answer(name: string | RegExp): Promise<void> {
  const link = screen().getByRole('link', typeof name === 'string' ? { name, exact: true } : { name });
  const to = await link.getAttribute('href');
  await link.click();
  await arrive((to ?? '').slice(1));
}

/** Opens a screen by its address. */
async function at(id: string): Promise<void> {
  await page.goto(`${inject('siteAddress')}${twoKeys}#${id}`);
  await arrive(id);
}

describe('by touch', () => {
  beforeEach(() => open(twoKeys));

  test('from the cautions over a hold and the trap to the active code, and on to its answer', async () => {
    await says(screen()).toContain('Never run the engine indoors');
    await answer('I have read this: go on');
    await seen().toContain('The screen is dark');
    await answer('I see it');
    await progress().toBe('Step 1 of 3 or 4');
    await heading().toMatch(/^Press 1 and 6 together/);
    await counted(screen().locator('.face .used')).toBe(2);
    await answer('I see it');

    await says(screen().locator('.badge')).toContain('Press 2');
    await says(screen().locator('.trap')).toContain('This list is not your answer');
    await answer('I see it');

    await says(screen().locator('.walk-here')).toContain('It is not your answer');
    await answer(/^Press INFO at once/);
    await progress().toBe('Step 3 of 3');
    await answer('I see it');

    await heading().toBe('Here is the active code');
    await says(screen().locator('.active-code')).toContain('The two small digits at the far right');
    await screen().getByLabel('Type it here').fill('G60D-2ZS');
    const lookUp = screen().getByRole('button', { name: 'Look it up' });
    await follow(lookUp, '/help/?unit=brasslight&code=G60D-2ZS');
    await counted(page.locator('#code-results').getByRole('option')).toBe(1);
  });

  test('a hold counts from the press on, says when to hold on and when it was too long', async () => {
    await at('do-dark-to-prompt');
    const count = screen().locator('.timer-count');
    await says(count).toBe('0');
    await page.clock.runFor(3000);
    await says(count).toBe('0');

    await screen().getByRole('button', { name: 'Holding now' }).click();
    await told().toBe('Keep holding: at least 4 seconds.');
    await page.clock.runFor(3400);
    await says(count).toBe('3');
    await told().toBe('Keep holding: at least 4 seconds.');
    await page.clock.runFor(1000);
    await says(count).toBe('4');
    await told().toBe('Hold on until the prompt shows, then let go.');
    await counted(screen().getByRole('link', { name: 'Start again' })).toBe(0);
    await page.clock.runFor(16_000);
    await told().toMatch(/^20 seconds are over: too long/);
    await answer('Start again');
    await heading().toBe('Does it look like this?');
  });

  test('both hands busy: it counts in and then counts', async () => {
    await at('do-dark-to-prompt');
    await screen().getByRole('button', { name: 'Begin in 5' }).click();
    await says(screen().locator('.timer-count')).toBe('5');
    await page.clock.runFor(3500);
    await says(screen().locator('.timer-count')).toBe('2');
    await page.clock.runFor(3700);
    await says(screen().locator('.timer-count')).toBe('2');
    await told().toBe('Keep holding: at least 4 seconds.');
  });

  test('a wait counts by itself', async () => {
    await at('do-list-loading-to-list');
    await page.clock.runFor(20_400);
    await says(screen().locator('.timer-count')).toBe('20');
    await told().toMatch(/^It may come at any moment/);
    await page.clock.runFor(70_000);
    await told().toMatch(/^90 seconds are over/);
  });

  test('a count left behind does not speak into the next step', async () => {
    await at('do-dark-to-prompt');
    await screen().getByRole('button', { name: 'Holding now' }).click();
    await answer('I see it');
    await page.clock.runFor(30_000);
    await told().toBe('Step 2 of 3 or 4');
  });

  test('a wrong turn: what else is seen, what to do, and on from the state it leads to', async () => {
    await at('do-dark-to-prompt');
    await answer('I see something else');
    await heading().toBe('What do you see?');
    await answer(/^The maker's name without the small square/);
    await heading().toContain('The keys came too late');
    await seen().toContain('The screen is dark');
    await answer('I see it');
    await progress().toBe('Step 1 of 3 or 4');
    await answer('I see something else');
    await answer('None of these: start again');
    await heading().toBe('Does it look like this?');
  });

  test('Back and the browser’s own back button go the way one came', async () => {
    await answer('I have read this: go on');
    await answer('I see it');
    await answer('I see something else');
    await screen().getByRole('link', { name: 'Back' }).click();
    await heading().toMatch(/^Press 1 and 6/);
    await page.goBack();
    await heading().toBe('Does it look like this?');
    await page.goForward();
    await heading().toMatch(/^Press 1 and 6/);
  });

  test('opened in the middle, Back leads to what lies before and not off the page', async () => {
    await open(`${twoKeys}#do-list-to-active`);
    await screen().getByRole('link', { name: 'Back' }).click();
    await heading().toMatch(/^Wait until the turning stroke/);
    await addressOf(page, 'pathname').toBe(`/help/${twoKeys}`);
  });

  test('a reload in the middle keeps the step, the way back and the running count', async () => {
    await answer('I have read this: go on');
    await answer('I see it');
    await screen().getByRole('button', { name: 'Holding now' }).click();
    await page.clock.runFor(2200);
    await page.reload();
    await arrive('do-dark-to-prompt');
    await heading().toMatch(/^Press 1 and 6/);
    await page.clock.runFor(3000);
    await says(screen().locator('.timer-count')).toBe('5');
    await screen().getByRole('link', { name: 'Back' }).click();
    await heading().toBe('Does it look like this?');
  });

  test('everything to be hit is at least 48 px high, what answers 64 px', async () => {
    const small: string[] = [];
    let targets = 0;
    for (const id of await page.locator('.walk-screen').evaluateAll((all) => all.map((one) => one.id))) {
      await at(id);
      for (const [within, least] of [
        ['.walk-screen:visible .walk-answers .big, .walk-choices a:visible, [data-start]:visible', 64],
        ['.walk button:visible, .walk a:visible, .walk summary:visible, .walk input:visible', 48],
      ] as const) {
        const sizes = await page
          .locator(within)
          .evaluateAll((all) =>
            all.map((one) => ({ text: one.textContent, height: one.getBoundingClientRect().height })),
          );
        for (const { text, height } of sizes) if (height < least) small.push(`${id}: ${text} ${height}`);
        targets += sizes.length;
      }
    }
    expect(small).toEqual([]);
    expect(targets).toBeGreaterThan(50);
  });
});

describe('by keys alone', () => {
  beforeEach(() => open(twoKeys));

  test('Enter and Space go on, X says something else, digits choose, Escape and Backspace go back', async () => {
    await page.locator('.walk').focus();
    await page.keyboard.press('Enter');
    await heading().toBe('Does it look like this?');
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H2');
    await page.keyboard.press('Space');
    await heading().toMatch(/^Press 1 and 6/);
    // The filled button begins the count first.
    await page.keyboard.press('Enter');
    await told().toMatch(/^Keep holding/);
    await page.keyboard.press('Enter');
    await heading().toMatch(/^Press MENU twice/);
    await page.keyboard.press('x');
    await heading().toBe('What do you see?');
    await page.keyboard.press('Escape');
    await heading().toMatch(/^Press MENU twice/);
    await page.keyboard.press('Enter');
    await heading().toBe('Two ways on');
    await page.keyboard.press('2');
    await heading().toMatch(/^Wait until/);
    await page.keyboard.press('Backspace');
    await heading().toBe('Two ways on');
    await page.keyboard.press('1');
    await heading().toMatch(/^Press INFO at once/);
    await page.keyboard.press('Enter');
    await heading().toBe('Here is the active code');
  });

  test('a field keeps its keys', async () => {
    await at('code-active');
    const field = screen().getByLabel('Type it here');
    await field.focus();
    await page.keyboard.type('X1 2');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Escape');
    await expect.poll(() => field.inputValue()).toBe('X1 ');
    await heading().toBe('Here is the active code');
  });

  test('every key is told on the page', async () => {
    const keys = page.locator('.walk-keys');
    await keys.getByText('By keys').click();
    expect(await keys.locator('kbd').allTextContents()).toEqual([
      'Enter',
      'Space',
      'Esc',
      'Backspace',
      'X',
      '1',
      '9',
    ]);
  });
});

test('the screen is kept awake once the walk has begun, again after it was hidden, and that is said', async () => {
  await context?.close();
  context = await browser.newContext({ serviceWorkers: 'block' });
  page = await context.newPage();
  await page.addInitScript(() => {
    const asked: EventTarget[] = [];
    Object.assign(window, { asked });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: async () => {
          const lock = Object.assign(new EventTarget(), { release: async () => {} });
          asked.push(lock);
          return lock;
        },
      },
    });
  });
  await page.goto(`${inject('siteAddress')}${twoKeys}`);
  const locks = () =>
    expect.poll(() => page.evaluate(() => (window as unknown as { asked: EventTarget[] }).asked.length));
  await locks().toBe(0);
  await answer('I have read this: go on');
  await locks().toBe(1);
  await page.getByText('The screen is kept awake.').waitFor();
  await page.evaluate(() => {
    (window as unknown as { asked: EventTarget[] }).asked[0]?.dispatchEvent(new Event('release'));
  });
  await visible(page.getByText('The screen is kept awake.')).toBe(false);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await locks().toBe(2);
});

/** Opens a page and gives what it has read aloud so far, each with its language. */
async function openListening(path: string): Promise<() => Promise<{ text: string; lang: string }[]>> {
  await context?.close();
  context = await browser.newContext({ serviceWorkers: 'block' });
  page = await context.newPage();
  await page.addInitScript(() => {
    const spoken: object[] = [];
    Object.assign(window, { spoken });
    Object.defineProperty(window, 'speechSynthesis', {
      value: {
        cancel: () => {},
        speak: ({ text, lang }: { text: string; lang: string }) => spoken.push({ text, lang }),
      },
    });
  });
  await page.goto(`${inject('siteAddress')}${path}`);
  return () =>
    page.evaluate(() => (window as unknown as { spoken: { text: string; lang: string }[] }).spoken);
}

test('it reads aloud when asked to, and not before', async () => {
  const spoken = await openListening(twoKeys);
  await answer('I have read this: go on');
  expect(await spoken()).toEqual([]);
  await page.getByRole('button', { name: 'Read aloud' }).click();
  await expect
    .poll(async () => (await spoken()).at(-1)?.text)
    .toMatch(/^Where you start\. Does it look like this\? You see\. The screen is dark/);
  await answer('I see it');
  await expect
    .poll(async () => (await spoken()).at(-1)?.text)
    .toMatch(/^Step 1 of 3 or 4\. Press 1 and 6.*Begin.*Let go/);
});

test.each([
  ['', 'en'],
  ['es/', 'es'],
])('on the site below “%s” it speaks the language %s', async (folder, lang) => {
  const spoken = await openListening(`${folder}${twoKeys}`);
  await page.locator('[data-speak]').click();
  await expect.poll(async () => (await spoken()).map((one) => one.lang)).toEqual([lang]);
});

test('printed, every way is one page with its steps and its trap', async () => {
  await context?.close();
  context = await browser.newContext({ colorScheme: 'dark', serviceWorkers: 'block' });
  page = await context.newPage();
  const ways = pagesOfLanguage().filter((path) => /\/way-in\//.test(path));
  expect(ways.length).toBeGreaterThan(4);
  for (const path of ways) {
    await page.goto(`${inject('siteAddress')}${path}`);
    const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)], path).toHaveLength(1);
    await printed(page);
    const card = page.locator('.way-card');
    expect(await card.isVisible()).toBe(true);
    expect(
      await page.locator('.walk, .way-static, .masthead, .section').locator('visible=true').count(),
    ).toBe(0);
    const text = await textOf(card);
    expect(text).toContain('Not your answer:');
    expect(text).toContain('The active code:');
    expect(text).toContain('Never run the engine indoors');
    await page.emulateMedia({ media: 'screen' });
    await visible(card).toBe(false);
    // As the browser itself has it, or the next page would be printed as it is on the screen.
    await page.emulateMedia({ media: null });
  }
});

test('without scripts the whole way stands there as steps, and no button that would do nothing', async () => {
  await open(twoKeys, { javaScriptEnabled: false });
  expect(await page.locator('.walk').isVisible()).toBe(false);
  expect(await page.locator('.steps > li').count()).toBe(3);
  expect(await textOf(page.locator('.cautions:visible').first())).toContain('Only when parked');
  expect(await page.getByRole('button').count()).toBe(0);
});

describe('held to WCAG 2.2, with the drawing in words unfolded', () => {
  // Colours do not go by width.
  for (const [width, height, colorScheme] of [
    [390, 844, 'light'],
    [1280, 900, 'dark'],
  ] as const) {
    test(`each screen at ${width} px, ${colorScheme}`, async () => {
      await open(twoKeys, { viewport: { width, height }, colorScheme });
      // What looks for violations waits by the clock of the page.
      await page.clock.resume();
      const found: string[] = [];
      for (const id of ['begin', 'do-dark-to-prompt', 'choose-list-loading', 'else-prompt', 'code-active']) {
        await at(id);
        await unfold(page);
        found.push(...(await axeViolations(page)).map((one) => `${id}: ${one}`));
      }
      // Too long is told on a dark ground of its own.
      await at('do-dark-to-prompt');
      await screen().getByRole('button', { name: 'Holding now' }).click();
      await page.clock.runFor(21_000);
      await told().toMatch(/^20 seconds are over/);
      found.push(...(await axeViolations(page)));
      expect(found).toEqual([]);
    });
  }
});
