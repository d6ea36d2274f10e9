/** Decision tables in a real browser: anchors, narrowing, the question backwards, the profile’s page, no scripts. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest';
import { axeViolations, coloursIn } from './axe.ts';
import { addressOf, counted, follow, launchBrowser, says, textOf, visible } from './browser.ts';

let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  // Nothing is kept from page to page: the address has it all.
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
});
afterAll(() => browser.close());
beforeEach(async () => {
  page = await context.newPage();
});
afterEach(() => page.close());

const open = (path: string) => page.goto(`${inject('siteAddress')}tables/${path}`);
const rules = () => page.locator('.rule:visible');
const group = (answer: string) =>
  page.locator('.answer-group', { has: page.getByText(answer, { exact: true }) });
const codesIn = (answer: string) =>
  expect.poll(async () =>
    (await group(answer).locator('.by-unit .code').allTextContents()).map((code) => code.trim()),
  );

test('the list of tables is in the navigation and leads to each', async () => {
  await page.goto(inject('siteAddress'));
  await follow(page.locator('.places').getByRole('link', { name: 'What now?' }), '/help/tables/');
  await counted(page.locator('.row-link')).toBe(7);
  await follow(
    page.getByRole('link', { name: 'Can I put an amplifier behind this profile as it is?' }),
    '/help/tables/amplifier-without-reflash/',
  );
  await counted(rules()).toBe(9);
});

test('each rule has an address of its own', async () => {
  await open('amplifier-without-reflash/#rule-rear-from-front');
  const rule = page.locator('#rule-rear-from-front');
  await expect.poll(() => rule.evaluate((element) => element.matches(':target'))).toBe(true);
  await expect.poll(async () => (await rule.boundingBox())?.y ?? -1).toBeLessThan(200);
  expect(await textOf(rule.locator('[data-label="Rear outputs"]'))).toContain('silent or none there');
});

test('answers narrow rules and profiles, stand in the address, and survive a reload', async () => {
  await open('amplifier-without-reflash/');
  await page.getByLabel('Will the amplifier drive rear speakers?').selectOption('yes');
  await page.getByLabel('Is there an equaliser in the plan?').selectOption('yes');
  await page.getByLabel('What inputs will you use on the amplifier?').selectOption('speaker level');
  await says(page.getByRole('status')).toContain('32\u00a0profiles settled, none is open');
  await visible(page.locator('#rule-boost-stays')).toBe(false);
  await visible(page.locator('#rule-too-hot-for-low-level')).toBe(false);
  await codesIn('keep and correct').toContain('5S1I-B80');
  await codesIn('keep').not.toContain('5S1I-B80');
  await addressOf(page, 'search').toBe('?rear-wanted=yes&equaliser=yes&amp-input=speaker+level');
  const left = await textOf(page.getByRole('status'));
  await page.reload();
  await says(page.getByRole('status')).toBe(left);
  await page.getByRole('button', { name: 'Begin again' }).click();
  await counted(rules()).toBe(9);
  await addressOf(page, 'search').toBe('');
});

test('on a wide screen it is a table with a column for each question, and narrows the same', async () => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await open('profile-for-a-plan/?drives=speakers+alone');
  await counted(page.locator('.decision thead th:visible')).toBe(9);
  await says(page.getByRole('status')).toContain('4 of 10\u00a0rules are left');
  await counted(rules()).toBe(4);
  const [head, cell] = [page.locator('.decision thead th').nth(6), page.locator('.rule:visible td').nth(5)];
  expect((await cell.boundingBox())?.x).toBe((await head.boundingBox())?.x);
});

test('the unit filter leaves its profiles, and the rules they come under', async () => {
  await open('amplifier-without-reflash/?head_unit=lanternby');
  await expect
    .poll(async () => [...new Set(await page.locator('.answer-group .by-unit dt').allTextContents())])
    .toEqual(['Lanternby']);
  await visible(page.locator('#rule-bass-is-gone')).toBe(false);
  await visible(page.locator('#rule-boost-moves')).toBe(true);
});

test('profiles a rule points to are those of the unit', async () => {
  await open('reflash-towards-what/?behind=aftermarket+amplifier&head_unit=glasswick');
  const links = page.locator('#rule-boost-moves a[data-unit]:visible');
  await expect.poll(async () => (await links.allTextContents()).map((one) => one.trim())).toEqual(['0x5B0']);
});

test('the question backwards: profiles by answer, surest first; the borderline ones with what settles them', async () => {
  await open('input-of-the-amplifier/?has=low-level+inputs&head_unit=dialstone');
  const plain = group('low-level inputs, through an adapter');
  await expect
    .poll(() => plain.locator('.part-words').allTextContents())
    .toEqual(['Surely', 'Perhaps, borderline: Clean volts']);
  await codesIn('low-level inputs, through an adapter').toEqual([
    '1.1E',
    '2.E5',
    '8.b2',
    '1.10',
    '5.08',
    '6.00',
  ]);
  await says(plain.locator('.by-unit').last()).toMatch(/1\.10\s*4\.00\sV\s±\s0\.0\d\sV/);
  await says(page.locator('.settling')).toContain('with a finer meter');
});

test('a number narrows too; one the data sheet cannot mean counts as not said and is marked', async () => {
  await open('input-of-the-amplifier/?has=speaker-level+inputs');
  const field = page.getByLabel('How much do its speaker-level inputs take at most');
  await field.fill('9');
  await visible(page.locator('#rule-usual-range')).toBe(true);
  await visible(page.locator('#rule-wide-range')).toBe(false);
  await codesIn('speaker-level inputs, below the last steps').toContain('0x7E8');
  await visible(page.locator('.settling')).toBe(false);
  await field.fill('900');
  await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
  await visible(page.locator('#rule-wide-range')).toBe(true);
});

test('an address that says what is no answer says nothing', async () => {
  await open('input-of-the-amplifier/?has=%3Cb%3E&takes=abc&head_unit=nobody&__proto__=1');
  await counted(rules()).toBe(7);
  await visible(page.getByRole('button', { name: 'Begin again' })).toBe(false);
});

test('a profile’s page says what each table says of it, down to the readings', async () => {
  await page.goto(`${inject('siteAddress')}profiles/dialstone/1-10/`);
  const said = page.locator('.table-answers > li');
  expect(await said.count()).toBe(6);
  const amplifier = said.first();
  expect(await textOf(amplifier.locator('.depends'))).toContain('Is there an equaliser in the plan?');
  await amplifier.locator('summary').first().click();
  const why = amplifier.locator('.why').first();
  await visible(why).toBe(true);
  const value = why.locator('.reasons a').first();
  expect(await textOf(value)).toMatch(/dB\s±/);
  expect(await page.locator(`${await value.getAttribute('href')}`).count()).toBe(1);
  expect(await why.locator('.reasons a[href*="/readings/#r-"]').count()).toBeGreaterThan(0);
  expect(await why.locator('.reasons a[href*="/sources/"]').count()).toBeGreaterThan(0);
  expect(await textOf(page.locator('.borderline').first())).toContain('with a finer meter');
  await follow(why.getByRole('link', { name: /^Rule 3/ }), /#rule-boost-stays$/);
});

describe('without scripts', () => {
  beforeEach(async () => {
    await page.close();
    const plain = await browser.newContext({
      javaScriptEnabled: false,
      viewport: { width: 390, height: 844 },
    });
    page = await plain.newPage();
  });
  afterEach(() => page.context().close());

  test('the whole table stands there, with the profiles under each rule and each answer', async () => {
    await open('amplifier-without-reflash/');
    await visible(page.locator('#table-form')).toBe(false);
    await counted(rules()).toBe(9);
    expect(await page.locator('#rule-bass-is-gone summary').textContent()).toBe('4\u00a0profiles, surely');
    await page.locator('#rule-bass-is-gone summary').click();
    const profile = page.locator('#rule-bass-is-gone').getByRole('link', { name: '0x0E1' });
    await follow(profile, '/help/profiles/glasswick/0x0e1/');
    await page.goBack();
    await page.waitForURL('**/amplifier-without-reflash/');
    await counted(page.locator('.answer-group')).toBe(3);
  });
});

test('a table is offered to be taken along, with what is proved of it', async () => {
  await open('code-into-replacement-unit/');
  expect(await textOf(page.locator('.proof'))).toContain('Complete: every combination has a rule.');
  const offered = page.locator('a[download]');
  expect(await offered.evaluateAll((all) => all.map((one) => one.getAttribute('download')))).toEqual([
    'code-into-replacement-unit.dmn',
    'code-into-replacement-unit.csv',
  ]);
  for (const link of await offered.all()) {
    const response = await page.request.get(
      new URL((await link.getAttribute('href')) ?? '', page.url()).href,
    );
    expect(response.status()).toBe(200);
    expect(await response.text()).toContain('made-for-speakers');
  }
});

test('the search finds a table by its name, under its kind', async () => {
  await page.goto(inject('siteAddress'));
  await page.getByRole('combobox', { name: 'Code on your screen' }).fill('upgrades in stages');
  await expect
    .poll(() => page.locator('#page-results').getByRole('link').allTextContents())
    .toContainEqual(expect.stringContaining('What do I buy first'));
  await expect.poll(() => page.locator('#filter-kind option').allTextContents()).toContain('Table');
});

for (const [colorScheme, other, width] of [
  ['light', 'dark', 390],
  ['dark', 'light', 1280],
] as const) {
  test(`a narrowed table has no violation, ${colorScheme}, ${width} px`, async () => {
    const own = await browser.newContext({
      viewport: { width, height: 900 },
      colorScheme,
      serviceWorkers: 'block',
    });
    const narrowed = await own.newPage();
    await narrowed.goto(
      `${inject('siteAddress')}tables/input-of-the-amplifier/?has=low-level+inputs&takes=900#rule-low-level`,
    );
    await visible(narrowed.getByRole('button', { name: 'Begin again' })).toBe(true);
    expect([...(await axeViolations(narrowed)), ...(await coloursIn(narrowed, other))]).toEqual([]);
    await own.close();
  });
}

test('a test in a cell leads to the profiles that pass it, unfolded', async () => {
  await page.goto(`${inject('siteAddress')}tables/amplifier-without-reflash/`);
  const cell = page.locator('.decision .test').first();
  const list = page.locator((await cell.getAttribute('href')) ?? 'none');
  expect(await list.isVisible()).toBe(false);
  await cell.click();
  await visible(list).toBe(true);
  await counted(list.getByRole('link')).toBeGreaterThan(0);
});
