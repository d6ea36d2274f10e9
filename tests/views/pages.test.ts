/** The views of the demo content: whole, small, and plain data. */
import { expect, test } from 'vitest';
import { cautionIds } from '../../schemas/index.ts';
import { readAnswers } from '../../src/answers.ts';
import { rules } from '../../src/check/index.ts';
import { cautionTexts } from '../../src/views/cautions.ts';
import { codeList, codeSentences } from '../../src/views/code-list.ts';
import { entriesOf } from '../../src/views/code-list-format.ts';
import { planPages, verdictCounts } from '../../src/views/plan-answers.ts';
import { rulesPage } from '../../src/views/rules-page.ts';
import { listsView, siteView } from '../../src/views/site.ts';
import { sourcePages } from '../../src/views/source-page.ts';
import { editedExample } from '../check/example-base.ts';
import { allViews, demoAnswers, entryPageKinds, entryPages } from './sample.ts';

const answers = await demoAnswers();
const { base } = answers;

test('every view is plain data: it comes back from JSON as it went in', async () => {
  const views = [
    siteView(answers),
    listsView(answers),
    codeList(answers),
    rulesPage(answers),
    ...(await entryPages(answers)),
  ];
  for (const view of views) expect(JSON.parse(JSON.stringify(view))).toEqual(view);
});

test('there is a page for every entry that has one', async () => {
  for (const [pages, entries] of Object.entries(entryPageKinds)) {
    const views = await allViews(answers, pages as keyof typeof entryPageKinds);
    expect(views.map(({ id }) => id).sort(), pages).toEqual([...base[entries].keys()].sort());
    expect(views.length, pages).toBeGreaterThan(0);
  }
});

test('every reading of every sheet is shown on the page of its profile', async () => {
  const shown = (await allViews(answers, 'readingsPages')).flatMap(({ sessions }) =>
    sessions.flatMap(({ rows }) => rows),
  );
  const taken = [...base.readings.values()].reduce((sum, table) => sum + table.length, 0);
  expect(shown.length).toBe(taken);
});

test('readings are shown with the decimals of their meter', async () => {
  const resolutions = new Map(
    [...base.outputs.values()].map((session) => [session.id, session.data.instrument.resolutionVolts]),
  );
  for (const { sessions } of await allViews(answers, 'readingsPages')) {
    for (const { id, voltsDecimals } of sessions) {
      expect(10 ** -voltsDecimals).toBeLessThanOrEqual((resolutions.get(id) ?? 0) * 1.0001);
    }
  }
});

test('the list of codes has every code once, with its sentence and no more', () => {
  const entries = entriesOf(codeList(answers));
  const profiles = [...base.profiles.values()];
  expect(entries.map(({ profile }) => profile).sort()).toEqual(profiles.map(({ id }) => id).sort());
  for (const { code, profile, otherSpellings, display, family } of entries) {
    const data = base.profiles.get(profile)?.data;
    expect({ code, otherSpellings }).toEqual({ code: data?.code, otherSpellings: data?.otherSpellings });
    expect(display).toBe(base.families.get(family)?.data.face.screen.display);
  }
  const sentences = codeSentences(answers);
  expect(Object.keys(sentences).sort()).toEqual(profiles.map(({ id }) => id).sort());
  for (const sentence of Object.values(sentences)) expect(sentence).toMatch(/\.$/);
});

test('no page holds the whole base: a profile’s view stays below 200 kB, the lists below 40', async () => {
  for (const view of await allViews(answers, 'profilePages'))
    expect(JSON.stringify(view).length).toBeLessThan(200_000);
  expect(JSON.stringify(listsView(answers)).length).toBeLessThan(40_000);
});

test('the page of a plan lists the best of each unit where there are too many, and counts all', () => {
  const [whole, bounded] = [planPages(answers), planPages(answers, 20)];
  for (const [at, plan] of bounded.entries()) {
    const all = whole[at];
    expect(plan.tally).toEqual(all?.tally);
    for (const [index, { rows, more }] of plan.families.entries()) {
      const before = all?.families[index];
      expect(before?.more).toBe(0);
      expect(rows).toEqual(before?.rows.slice(0, 4));
      expect(rows.length + more).toBe(before?.rows.length);
    }
  }
  expect(bounded.flatMap(({ families }) => families).some(({ more }) => more > 0)).toBe(true);
});

test('a plan’s tally counts every profile once', () => {
  for (const plan of planPages(answers)) {
    const rows = plan.families.flatMap((family) => family.rows);
    expect(rows.length).toBe(base.profiles.size);
    expect(plan.tally.reduce((sum, one) => sum + one.count, 0)).toBe(rows.length);
  }
  expect(verdictCounts([{ verdict: 'keep' }, { verdict: 'reflash' }, { verdict: 'keep' }])).toEqual([
    { verdict: 'keep', label: 'Keep', count: 2 },
    { verdict: 'reflash', label: 'Reflash', count: 1 },
  ]);
});

test('the page of a bench session shows its conditions and links to the readings it took', () => {
  const sessions = sourcePages(answers).flatMap((source) => source.sessions);
  expect(sessions.map(({ id }) => id).sort()).toEqual([...base.outputs.keys()].sort());
  for (const session of sessions) {
    const labels = session.facts.map(({ label }) => label);
    for (const label of ['Taken on', 'Voltmeter', 'Accuracy', 'Test signal', 'Load', 'Supply']) {
      expect(labels).toContain(label);
    }
    expect(session.readings.length).toBe(base.readings.get(session.id)?.profiles.length);
  }
});

test('the page of the check has every rule, and every exception with its reason and last day', async () => {
  expect(rulesPage(answers).rules.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
  expect(rulesPage(answers).exceptions).toEqual([]);
  const bad =
    'rule: dangling-link\nfile: statements/letter-rear.yaml\nabout: letter\nreason: Lost.\nby: Bench lead\nuntil: 2999-12-31\nsources: [maker-bulletin]\n';
  const example = await readAnswers(editedExample([{ file: 'exceptions/letter.yaml', good: '', bad }]));
  expect(rulesPage(example.answers).exceptions).toMatchObject([
    {
      id: 'letter',
      rule: 'dangling-link',
      file: 'statements/letter-rear.yaml',
      about: 'letter',
      reason: 'Lost.',
      decided: 'Decided by: Bench lead. It holds until 31 December 2999.',
      sources: [{ title: "Maker's bulletin 7: units and their profiles", path: 'sources/maker-bulletin/' }],
    },
  ]);
});

test('every caution has its wording, and a unit prints all of its own', async () => {
  for (const { title, text } of cautionTexts(cautionIds)) {
    expect(title).toMatch(/\.$/);
    expect(text.length).toBeGreaterThan(60);
  }
  for (const unit of await allViews(answers, 'unitPages')) {
    const printed = new Set([...unit.cautions, ...unit.wiringCautions].map(({ id }) => id));
    for (const id of base.families.get(unit.id)?.data.cautions ?? []) expect(printed).toContain(id);
  }
});

test('what could kill is named in plain words', () => {
  const [engine] = cautionTexts(['engine-off-indoors']);
  expect(engine?.text).toContain('carbon monoxide');
  const [bridged] = cautionTexts(['bridged-outputs']);
  expect(bridged?.text).toMatch(/neither is ground/);
});
