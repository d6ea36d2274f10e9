/** The planner in a real browser: what it says is what the program works out; nothing is lost on the way. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { catalogueOf, readAnswers, reportPlan } from '../../src/answers.ts';
import { readQuery } from '../../src/decide/index.ts';
import { curveDb } from '../../src/decide/plan/equaliser/curve.ts';
import { gridOf, sampleRateHz } from '../../src/decide/plan/equaliser/wrong.ts';
import { type Filter, formatQuantity, shelfQ } from '../../src/measure/index.ts';
import { languagesOf } from '../../src/views/languages.ts';
import { lineText, lineTexts } from '../../src/views/line-texts.ts';
import { verdictLabel } from '../../src/views/wording.ts';
import { inLanguage } from '../../src/words/index.ts';
import { axeViolations, coloursIn } from './axe.ts';
import {
  counted,
  follow,
  launchBrowser,
  nextFrames,
  printed,
  says,
  textOf,
  unfold,
  visible,
} from './browser.ts';
import { budgetOf, filledPlan } from './page-budgets.ts';
import { scriptBytes } from './script-bytes.ts';

const { answers } = await readAnswers(new URL('../../content', import.meta.url).pathname);

const equaliser = filledPlan;
const moving = { ...equaliser, code: '8B0S-I5Z' };

let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  // The address has all of a plan: nothing is kept from page to page but the files.
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
});
afterAll(() => browser.close());
beforeEach(async () => {
  page = await context.newPage();
});
afterEach(() => page.close());

type Fields = Readonly<Record<string, string>>;
const open = (fields: Fields = {}, on = page) =>
  on.goto(`${inject('siteAddress')}planner/?${new URLSearchParams(fields)}`);
const sentence = (on = page) => says(on.locator('.plan-sentence'));
const section = (id: string) => page.locator(`#section-${id}`);
const reportOf = ({ unit = '', code = '', ...fields }: Fields) => {
  const profile = answers.base.profilesOfFamily.get(unit)?.find(({ data }) => data.code === code);
  const report = reportPlan(answers, profile?.id ?? '', readQuery(fields, catalogueOf(answers)).query);
  if (!report) throw new Error(`there is no profile ${code}`);
  return report;
};
const choose = (label: string, value: string) =>
  page.locator('#plan-form').getByLabel(label, { exact: true }).selectOption(value);
/** The equaliser’s settings come last; with them all there is on the screen is finished. */
const finished = (id = 'correction') => section(id).waitFor({ state: 'attached' });

/** After a change all is made anew: what is marked before it is gone when the settings are there again. */
async function finishedAnew(change: () => Promise<unknown>, on = page): Promise<void> {
  const settings = on.locator('#section-correction');
  await settings.evaluate((one) => one.classList.add('of-before'));
  await change();
  await on.locator('#section-correction:not(.of-before)').waitFor({ state: 'attached' });
}
/** The card for paper comes last of all that is worked out. */
const cardFilled = (on = page) => on.locator('#job-card .job-found').first().waitFor({ state: 'attached' });

test('the answer and every line of the arithmetic are those of the program', async () => {
  const fields = {
    ...equaliser,
    subwoofer: 'case-subwoofer',
    wire: '3,5',
    generator: '30',
    machine: '18',
    battery: '20',
  };
  const report = reportOf(fields);
  await open(fields);
  await finished();
  await sentence().toBe(report.answer.sentence);
  expect(await page.locator('#plan-reasons dd').allTextContents()).toEqual(
    report.answer.reasons.map(({ text }) => text),
  );
  expect(
    await page.locator('#plan-arithmetic > details').evaluateAll((all) => all.map((one) => one.id)),
  ).toEqual(report.sections.map(({ id }) => `section-${id}`));
  for (const { id, lines, remarks, correction } of report.sections) {
    const results = section(id).locator('.plan-result strong');
    expect(await results.allTextContents(), id).toEqual(lines.map(({ result }) => formatQuantity(result)));
    const given = await section(id).locator('.plan-given dd').allTextContents();
    expect(given, id).toEqual(
      lines.flatMap((line) => line.given.map(({ quantity }) => formatQuantity(quantity))),
    );
    expect(await section(id).locator('.plan-remark').allTextContents(), id).toEqual(remarks);
    expect(await section(id).locator('.plan-filters li').count(), id).toBe(correction?.filters.length ?? 0);
  }
  expect(await page.locator('.plan-suits li').count()).toBe(report.suits.length);
});

test('on the site in Spanish all of it is in Spanish, as the program says it', async () => {
  const spanish = languagesOf(answers).find(({ tag }) => tag === 'es');
  if (!spanish) throw new Error('the demo does not speak Spanish');
  const fields = { ...equaliser, wire: '3,5' };
  const report = await inLanguage(spanish, () => reportOf(fields));
  expect(report.answer.sentence).not.toBe(reportOf(fields).answer.sentence);
  await page.goto(`${inject('siteAddress')}es/planner/?${new URLSearchParams(fields)}`);
  await finished();
  await sentence().toBe(report.answer.sentence);
  expect(await page.locator('#plan-reasons dd').allTextContents()).toEqual(
    report.answer.reasons.map(({ text }) => text),
  );
  const lines = report.sections.flatMap((one) => one.lines);
  const arithmetic = page.locator('#plan-arithmetic');
  const texts = await inLanguage(spanish, () => {
    const all = lineTexts();
    return lines.map(({ id }) => lineText(all, id));
  });
  expect(await arithmetic.locator('h4').allTextContents()).toEqual(texts.map(({ title }) => title));
  expect(await arithmetic.locator('.plan-line > .fine').allTextContents()).toEqual(
    texts.map(({ note }) => note),
  );
  expect(await arithmetic.locator('.plan-remark').allTextContents()).toEqual(
    report.sections.flatMap(({ remarks }) => remarks),
  );
  // Rules in words stand as they are, whatever their words look like.
  const rules = lines.filter(({ isInWords }) => isInWords);
  expect(rules.length).toBeGreaterThan(5);
  expect(await arithmetic.locator('p.plan-formula').allTextContents()).toEqual(
    rules.map(({ symbol, formula }) => `${symbol.replace('_', '')} = ${formula}`),
  );
});

test('every formula is set, and has all the symbols that are put in', async () => {
  await open({ ...equaliser, generator: '30', machine: '18', battery: '20' });
  await finished();
  const lines = await page.locator('.plan-line').evaluateAll((all) =>
    all.map((line) => ({
      formula: line.querySelector('.plan-formula')?.textContent ?? '',
      symbols: [...line.querySelectorAll('.plan-given dt math')].map((math) => math.textContent ?? ''),
      isSet: line.querySelector('.plan-formula math[display="block"]') !== null,
    })),
  );
  expect(lines.length).toBeGreaterThan(25);
  for (const { formula, symbols, isSet } of lines) {
    expect(formula).toMatch(/^\S+ ?= ?\S/u);
    for (const symbol of isSet ? symbols : []) expect(formula, formula).toContain(symbol);
  }
  const square = section('gain').locator('[data-line="full-power-volts"] msqrt');
  expect(await square.textContent()).toBe('P·Z');
});

test('measured values lead to their row on the profile’s page', async () => {
  await open(equaliser);
  await finished('gain');
  await section('gain').locator('summary').click();
  const measured = section('gain').locator('[data-line="above-least-input"] .plan-given a');
  await follow(measured, '/profiles/brasslight/5s1i-b80/#value-clean-volts');
  await counted(page.locator(':target')).toBe(1);
});

test('a change is answered at once, beside what was before, and can be taken back', async () => {
  await open(moving);
  await sentence().toBe(reportOf(moving).answer.sentence);
  expect(await page.locator('#plan-was').isVisible()).toBe(false);
  await choose('Front speakers', '');
  await page.locator('#plan-was').waitFor();
  await choose('Rear speakers', '');
  const { front: _, rear: __, ...bare } = moving;
  await sentence().toBe(reportOf(bare).answer.sentence);
  const was = page.locator('#plan-was');
  await says(was).toMatch(/^Was(?: and still is)?: /);
  await says(was).toContain(verdictLabel(reportOf(bare).answer.verdict));
  const back = page.getByRole('button', { name: 'Take the change back' });
  await back.click();
  // Of the two changes the last is taken back, and that in turn can be.
  const { front: ___, ...rest } = moving;
  await sentence().toBe(reportOf(rest).answer.sentence);
  expect(await page.locator('#plan-rear').inputValue()).toBe('lid-speaker');
  await visible(back).toBe(true);
});

test('the address holds the plan: filled in by hand and opened elsewhere it is the same', async () => {
  await open();
  await says(page.locator('#plan-status')).toContain('Say which unit you have');
  await choose('Model line', 'Ordwick');
  await choose('Model year', '2010');
  await expect.poll(() => page.locator('#plan-unit').inputValue()).toBe('brasslight');
  await says(page.locator('#plan-status')).toContain('Which code does your Brasslight show?');
  await choose('Code on its screen', '8B0S-I5Z');
  await choose('Amplifier', 'four-channels-medium');
  await page.locator('#plan-form').getByText('Numbers of your own amplifier').click();
  await page.getByLabel('Input, gain fully up, V').fill('0,5');
  await choose('Front speakers', 'horn-and-midwoofer');
  await page.getByLabel('Another head unit takes the place of this one').check();
  await expect.poll(() => page.url()).toContain('replacement=yes');
  await finished('carry-over');
  await cardFilled();
  const wide = await browser.newContext({ viewport: { width: 1280, height: 900 }, serviceWorkers: 'block' });
  const other = await wide.newPage();
  await other.goto(page.url());
  await other.locator('#section-carry-over').waitFor({ state: 'attached' });
  await cardFilled(other);
  await sentence(other).toBe(await textOf(page.locator('.plan-sentence')));
  const filled = (on: Page) =>
    on.locator('#plan-form').evaluate((form) => {
      if (!(form instanceof HTMLFormElement)) throw new Error('no form');
      return [...new FormData(form)].map(([name, value]) => `${name}=${String(value)}`);
    });
  expect(await filled(other)).toEqual(await filled(page));
  expect(await other.locator('#plan-arithmetic').textContent()).toBe(
    await page.locator('#plan-arithmetic').textContent(),
  );
  await wide.close();
});

test('one tap from a profile’s page, with unit and code filled in', async () => {
  await page.goto(`${inject('siteAddress')}profiles/northpane/os518-b2-10/`);
  await follow(
    page.getByRole('link', { name: 'Plan with this profile' }),
    /\/planner\/\?unit=northpane&code=/,
  );
  await page.locator('.plan-sentence').waitFor();
  expect(await page.locator('#plan-unit').inputValue()).toBe('northpane');
  expect(await page.locator('#plan-code').inputValue()).toBe('OS518-B2.10');
});

test('a typed code is taken however it is dashed and spaced, and finds its unit', async () => {
  await open();
  await says(page.locator('#plan-status')).not.toBe('');
  await page.getByLabel('Or type the code').fill('8b0s i5z');
  await expect.poll(() => page.locator('#plan-code').inputValue()).toBe('8B0S-I5Z');
  await expect.poll(() => page.locator('#plan-unit').inputValue()).toBe('brasslight');
  await page.getByLabel('Or type the code').fill('QQ99-77W');
  await page.locator('#plan-typed-not:visible').waitFor();
});

test('a code sent without its unit finds it', async () => {
  await open({ code: 'OS518-B2.10', amplifier: 'two-channels-small' });
  await page.locator('.plan-sentence').waitFor();
  expect(await page.locator('#plan-unit').inputValue()).toBe('northpane');
  await sentence().toBe(
    reportOf({ unit: 'northpane', code: 'OS518-B2.10', amplifier: 'two-channels-small' }).answer.sentence,
  );
});

test('each smallest change is a button, and pressing it makes the plan work', async () => {
  const report = reportOf(moving);
  await open(moving);
  const buttons = page.locator('.plan-change');
  await counted(buttons).toBe(report.changes.length);
  expect(report.changes.length).toBeGreaterThan(1);
  await buttons.first().press('Enter');
  const [first] = report.changes;
  await says(page.locator('#plan-head .verdict')).toContain(verdictLabel(first?.verdict ?? 'replace'));
  await counted(buttons).toBe(0);
  await says(page.locator('#plan-was')).toContain('Reflash');
});

test('a borderline answer is called so, with the reading that would settle it', async () => {
  const fields = {
    unit: 'northpane',
    code: 'GI106-I5.20',
    fitted: 'factory-amplifier',
    amplifier: 'factory-amplifier',
    front: 'fairing-coaxial',
    rear: 'lid-speaker',
  };
  const { answer, settledBy } = reportOf(fields);
  expect([answer.verdict, answer.possible, settledBy.length]).toEqual([
    'measure-first',
    ['keep', 'reflash'],
    1,
  ]);
  await open(fields);
  const box = page.locator('.plan-open');
  await box.waitFor();
  await says(box).toBe(
    'Borderline. Within the uncertainty of the readings it comes to: keep, or reflash. Known more exactly, this alone would settle it: Rear below front by.',
  );
  await sentence().toContain('Read front and rear again at one step.');
});

test('the equaliser is fitted beside the page, once for each profile', async () => {
  await open({ unit: 'brasslight', code: '5S1I-B80' });
  await page.locator('.plan-sentence').waitFor();
  const workers: string[] = [];
  page.on('worker', (worker) => workers.push(worker.url()));
  await choose('Amplifier', 'four-channels-equaliser');
  await finished();
  expect(workers.length).toBe(1);
  // Once more with other speakers: the settings are those of the profile, and kept.
  await choose('Front speakers', 'lid-speaker');
  await finished('hearing');
  await finished();
  await nextFrames(page);
  expect(workers.length).toBe(1);
});

test('wrong input is told at its field, and nothing is worked out from it', async () => {
  await open({ ...equaliser, wire: '99', load: 'abc', subwoofer: 'gigantic', least: '9', most: '2' });
  const fault = (field: string) => says(page.locator(`#fault-${field}`));
  await fault('wire').toBe('“99” cannot be used here. Give a number from 0.1 to 10.');
  await fault('load').toContain('“abc” cannot be used here.');
  await fault('subwoofer').toContain('No class of equipment is called “gigantic”.');
  await fault('least').toContain('The least input volts are above the most.');
  await visible(page.locator('#plan-wire')).toBe(true);
  await expect.poll(() => page.locator('#plan-wire').getAttribute('aria-invalid')).toBe('true');
  await visible(page.locator('#plan-body')).toBe(false);
  await page.locator('#plan-wire').fill('3');
  await page.locator('#plan-load').fill('');
  await page.locator('#plan-least').fill('');
  await choose('Subwoofer', 'case-subwoofer');
  await page.locator('.plan-sentence').waitFor();
  await counted(page.locator('.fault:visible')).toBe(0);
});

test.each([
  [{ unit: 'brasslight', code: '0000-000' }, 'code', 'Brasslight has no known profile “0000-000”.'],
  [{ unit: '<b>x</b>', code: '1' }, 'unit', 'No unit is called “<b>x</b>”.'],
])('an address that names what is not known here: %o', async (fields, field, words) => {
  await open(fields);
  await says(page.locator(`#fault-${field}`)).toContain(words);
  await says(page.locator('#plan-status')).not.toBe('');
  await visible(page.locator('#plan-body')).toBe(false);
});

test('the corrected curve lies over the measured one, and the gain step is marked', async () => {
  await open(equaliser);
  await finished();
  const figures = page.locator('#plan-figures');
  expect(await figures.locator('.curve').count()).toBe(3);
  expect(await textOf(figures)).toContain('corrected');
  const gain = reportOf(equaliser)
    .sections.flatMap(({ lines }) => lines)
    .find(({ id }) => id === 'gain-step');
  expect(await textOf(figures)).toContain(`set the gain at ${gain?.result.value}`);
});

test('another profile beside it: both curves, and what differs', async () => {
  await open(equaliser);
  await finished();
  await page.getByLabel('Code of the other profile').selectOption('8B0S-15Z');
  await page.locator('.plan-beside').waitFor();
  await expect.poll(() => new URL(page.url()).searchParams.get('beside')).toBe('8B0S-15Z');
  await counted(page.locator('#plan-beside .curve')).toBe(2);
  await counted(page.locator('.plan-beside tbody tr')).toBeGreaterThan(8);
  await says(page.locator('.plan-beside')).toContain('the same within uncertainty');
  await page.reload();
  await page.locator('.plan-beside').waitFor();
});

test('by keys alone: fill in, unfold, print', async () => {
  await open({ unit: 'brasslight', code: '8B0S-I5Z' });
  await page.locator('.plan-sentence').waitFor();
  await page.locator('#plan-amplifier').focus();
  await page.keyboard.press('ArrowDown');
  await finished('gain');
  await cardFilled();
  await page.keyboard.press('Tab');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent))
    .toContain('Numbers of your own');
  await section('gain').locator('summary').focus();
  await page.keyboard.press('Enter');
  const isOpen = () => expect.poll(() => section('gain').getAttribute('open'));
  await isOpen().toBe('');
  // What is open stays open while the plan changes.
  await choose('Front speakers', 'fairing-coaxial');
  await finished('hearing');
  await isOpen().toBe('');
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', '');
  });
  await page.getByRole('button', { name: 'Print the job card' }).press('Enter');
  await page.locator('body[data-printed]').waitFor();
});

test('on paper it is one job card, on A4 and on Letter', async () => {
  const all = { ...equaliser, subwoofer: 'case-subwoofer', generator: '30', machine: '18', battery: '20' };
  for (const fields of [
    all,
    { ...all, code: '8B0S-I5Z' },
    { ...all, code: '2Z6G-0O8', replacement: 'yes' },
  ]) {
    await open(fields);
    await cardFilled();
    for (const format of ['A4', 'Letter']) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)?.length, `${fields.code}, ${format}`).toBe(1);
    }
  }
  await open(equaliser);
  await cardFilled();
  await printed(page);
  const card = page.locator('#job-card');
  expect(await page.locator('#plan-form').isVisible()).toBe(false);
  const text = await textOf(card);
  const report = reportOf(equaliser);
  expect(text).toContain(report.answer.sentence);
  expect(text).toMatch(/Data of\s+\d+ \w+ \d{4}/);
  for (const id of ['gain-step', 'gain-target', 'fuse', 'wire-gauge']) {
    const line = report.sections.flatMap(({ lines }) => lines).find((one) => one.id === id);
    expect(line, id).toBeDefined();
    if (line) expect(text).toContain(formatQuantity(line.result));
  }
  for (const words of ['Fuse close to the battery', 'No ground on these outputs', 'Local law and codes']) {
    expect(text).toContain(words);
  }
});

test('before the card is made the page itself goes to paper, never an empty card', async () => {
  const card = page.locator('#job-card');
  await open();
  await says(page.locator('#plan-status')).toContain('Say which unit you have');
  await printed(page);
  expect(await card.isVisible()).toBe(false);
  expect(await page.locator('h1').isVisible()).toBe(true);
  expect(await page.locator('.masthead').isVisible()).toBe(true);
  await page.emulateMedia({ media: null });

  let letGo = (): void => undefined;
  const held = new Promise<void>((done) => {
    letGo = done;
  });
  let asked = 0;
  await page.route(/\/card\.[^/]+\.js$/, async (route) => {
    asked += 1;
    await held;
    await route.continue();
  });
  await open(equaliser);
  await finished();
  await expect.poll(() => asked).toBe(1);
  await printed(page);
  expect(await card.isVisible()).toBe(false);
  expect(await page.locator('.plan-sentence').isVisible()).toBe(true);
  expect(await page.locator('#plan-form').isVisible()).toBe(true);
  letGo();
  await visible(card).toBe(true);
  expect(await page.locator('#plan-form').isVisible()).toBe(false);
});

test('right after a change neither card nor answer of the plan before goes to paper', async () => {
  const changed = { ...equaliser, wire: '3,5' };
  const dropOf = (fields: Fields) => {
    const lines = reportOf(fields).sections.flatMap((one) => one.lines);
    const drop = lines.find(({ id }) => id === 'wire-drop-share');
    if (!drop) throw new Error('the drop along the wire is not worked out');
    return formatQuantity(drop.result);
  };
  const [was, is] = [dropOf(equaliser), dropOf(changed)];
  expect(is).not.toBe(was);
  await open(equaliser);
  await cardFilled();
  await printed(page);
  const card = page.locator('#job-card');
  await visible(card).toBe(true);
  expect(await textOf(card)).toContain(was);
  // All in one go: the page is given no time to work anything out.
  const atOnce = await page.evaluate((typed) => {
    window.print = () => {
      const card = document.querySelector('#job-card');
      document.body.dataset.printed = card?.checkVisibility() ? (card.textContent ?? '') : 'no card';
    };
    const wire = document.querySelector<HTMLInputElement>('#plan-wire');
    if (!wire) throw new Error('there is no field for the wire');
    wire.value = typed;
    wire.dispatchEvent(new Event('input', { bubbles: true }));
    document.querySelector<HTMLElement>('[data-print]')?.click();
    return ['#job-card', '#plan-body', '#plan-form'].map(
      (one) => document.querySelector(one)?.checkVisibility() ?? true,
    );
  }, changed.wire);
  expect(atOnce).toEqual([false, false, true]);
  // What the button was pressed for is printed when it is there.
  await expect.poll(() => page.evaluate(() => document.body.dataset.printed)).toContain(is);
});

test('cautions stand where work can hurt', async () => {
  await open(equaliser);
  await finished();
  const cautioned = {
    supply: 'Fuse close',
    gain: 'No ground',
    hearing: 'Mind your hearing',
    speakers: 'Disconnect',
  };
  for (const [id, words] of Object.entries(cautioned)) {
    expect(await textOf(section(id).locator('.cautions')), id).toContain(words);
    expect(await textOf(section(id).locator('.cautions')), id).toContain('a licensed workshop');
  }
});

test('without scripts it says so and leads to the usual plans', async () => {
  const without = await browser.newContext({ javaScriptEnabled: false });
  const plain = await without.newPage();
  await plain.goto(`${inject('siteAddress')}planner/`);
  expect(await plain.locator('#plan').isVisible()).toBe(false);
  const main = plain.getByRole('main');
  expect(await textOf(main)).toContain('needs scripts');
  await follow(main.getByRole('link', { name: 'Two-channel amplifier, front only' }), /\/plans\/.+\/$/);
  expect(await plain.locator('table.plan-table').count()).toBeGreaterThan(3);
  await without.close();
});

test('all scripts of a whole plan together are small enough', async () => {
  for (const language of ['', 'es/']) {
    const address = `${inject('siteAddress')}${language}planner/?${new URLSearchParams(filledPlan)}`;
    const { all, first, later } = await scriptBytes(browser, address);
    expect(first, language).toBeGreaterThan(10_000);
    expect(first, language).toBeLessThan(20_000);
    expect(all, language).toBeGreaterThan(first);
    expect(all, language).toBeLessThanOrEqual(budgetOf('planner'));
    expect(later, language).toBeGreaterThan(0);
    expect(later, language).toBeLessThan(1500);
  }
});

test('nothing is sent anywhere: only files of the site are asked for', async () => {
  const own = await browser.newContext();
  page = await own.newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(`${request.method()} ${request.url()}`));
  await open(equaliser);
  await finished();
  await cardFilled();
  await page.waitForLoadState('networkidle');
  await finishedAnew(() => choose('Front speakers', 'horn-and-midwoofer'));
  await sentence().toBe(reportOf({ ...equaliser, front: 'horn-and-midwoofer' }).answer.sentence);
  await nextFrames(page);
  const data = asked.filter((one) => one.includes('.json'));
  for (const one of asked) expect(one.startsWith(`GET ${inject('siteAddress')}`), one).toBe(true);
  for (const one of data) expect(one).not.toMatch(/amplifier|front=|code=/);
  expect(data.length).toBe(3);
  await own.close();
});

test('after one visit a plan is worked out without a network', async () => {
  const own = await browser.newContext();
  page = await own.newPage();
  await page.goto(inject('siteAddress'));
  await page.goto(`${inject('siteAddress')}units/brasslight/`);
  // Written last, when the whole unit is kept.
  await expect
    .poll(() => page.evaluate(async () => (await caches.match('offline.json')) !== undefined))
    .toBe(true);
  await own.setOffline(true);
  await open(equaliser);
  await finished();
  await sentence().toBe(reportOf(equaliser).answer.sentence);
  await own.close();
});

test('a filled plan with everything unfolded has no violation, and everything to hit is large enough', async () => {
  for (const [width, colorScheme, other] of [
    [390, 'light', 'dark'],
    [1280, 'dark', 'light'],
  ] as const) {
    const seen = await browser.newContext({
      viewport: { width, height: 900 },
      colorScheme,
      serviceWorkers: 'block',
    });
    const own = await seen.newPage();
    await open({ ...moving, beside: '8B0S-15Z', wire: '99' }, own);
    await own.locator('#fault-wire:visible').waitFor();
    await own.locator('#plan-wire').fill('3');
    await own.locator('#section-correction').waitFor({ state: 'attached' });
    await own.locator('.plan-beside').waitFor();
    await cardFilled(own);
    await finishedAnew(() => own.locator('#plan-front').selectOption('fairing-small'), own);
    await own.locator('#plan-was').waitFor();
    await nextFrames(own);
    await unfold(own);
    expect([...(await axeViolations(own)), ...(await coloursIn(own, other))]).toEqual([]);
    expect(await own.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    const small = await own
      .locator('#plan')
      .locator('select, input, button, summary, a')
      .evaluateAll((all) =>
        all.flatMap((one) => {
          const { height, width: across } = one.getBoundingClientRect();
          return across > 0 && height > 0 && height < 48 ? [`${one.textContent} ${height}`] : [];
        }),
      );
    expect(small).toEqual([]);
    await seen.close();
  }
});

/*
 * The browser’s own filters (Web Audio API, 1.1): peaking ones by the Cookbook with Q as it is, shelves at slope 1
 * whatever their Q, high-passes with Q in dB.
 */
const filters: readonly Filter[] = [
  ...[63, 250, 1000, 8000].flatMap((hz): Filter[] => [
    { kind: 'peaking', hz, gainDb: -8.5, q: 1.2 },
    { kind: 'peaking', hz, gainDb: 6, q: 0.5 },
    { kind: 'peaking', hz, gainDb: -12, q: 5 },
    { kind: 'low-shelf', hz, gainDb: -6, q: shelfQ(-6, 1) },
    { kind: 'low-shelf', hz, gainDb: 5.5, q: shelfQ(5.5, 1) },
    { kind: 'high-shelf', hz, gainDb: 4, q: shelfQ(4, 1) },
    { kind: 'high-pass', hz, gainDb: 0, q: Math.SQRT1_2 },
    { kind: 'high-pass', hz, gainDb: 0, q: 1 },
  ]),
];

test('the filters of the correction are those of the browser within 0.01 dB, 20 Hz to 20 kHz', async () => {
  const frequencies = Array.from({ length: 91 }, (_, at) => 20 * 10 ** (at / 30));
  expect(frequencies.at(-1)).toBeCloseTo(20_000, 6);
  await page.goto(inject('siteAddress'));
  const browsers = await page.evaluate(
    ({ wanted, hertz, rate }) => {
      const types = {
        peaking: 'peaking',
        'low-shelf': 'lowshelf',
        'high-shelf': 'highshelf',
        'high-pass': 'highpass',
      } as const;
      const context = new OfflineAudioContext(1, 1, rate);
      return wanted.map(({ kind, hz, gainDb, q }) => {
        const node = new BiquadFilterNode(context, {
          type: types[kind],
          frequency: hz,
          gain: gainDb,
          Q: kind === 'high-pass' ? 20 * Math.log10(q) : q,
        });
        const magnitudes = new Float32Array(hertz.length);
        node.getFrequencyResponse(Float32Array.from(hertz), magnitudes, new Float32Array(hertz.length));
        return [...magnitudes].map((one) => 20 * Math.log10(one));
      });
    },
    { wanted: [...filters], hertz: frequencies, rate: sampleRateHz },
  );
  const grid = gridOf(frequencies.map((hz) => Math.fround(hz)));
  filters.forEach((filter, index) => {
    const own = curveDb(filter, grid);
    const theirs = browsers[index] ?? [];
    const off = own.map((level, at) => Math.abs(level - (theirs[at] ?? Number.NaN)));
    expect(Math.max(...off), JSON.stringify(filter)).toBeLessThan(0.01);
  });
});
