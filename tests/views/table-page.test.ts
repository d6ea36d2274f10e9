/** The views of decision tables on the demo: rules in words, profiles under them, and what is narrowed down. */
import { expect, test } from 'vitest';
import { greatestBoost } from '../../src/measure/index.ts';
import { sourcePages } from '../../src/views/source-page.ts';
import { pieceSaid } from '../../src/views/table-address.ts';
import { tableAnswerViews } from '../../src/views/table-answers.ts';
import {
  byUnit,
  lister,
  mostListed,
  partWords,
  type Said,
  underWords,
} from '../../src/views/table-listing.ts';
import { type TablePageView, tablePages } from '../../src/views/table-page.ts';
import { demoAnswers } from './sample.ts';

const answers = await demoAnswers();
const allPages = tablePages(answers);
const pages = allPages.filter(({ isForPlans }) => !isForPlans);
const page = (id: string): TablePageView => {
  const found = pages.find((one) => one.id === id);
  if (!found) throw new Error(`no table ${id}`);
  return found;
};
const said = (table: TablePageView, given: Readonly<Record<string, string>>, unit?: string): Said => {
  const pieces = Object.entries(given).map(([id, text]): [number, number] => {
    const at = table.data.inputs.findIndex((input) => input.id === id);
    const ask = table.asks.find((one) => one.id === id);
    const piece = pieceSaid(
      table.data.inputs[at] ?? { id: '', label: '', asked: false, pieces: 0 },
      text,
      ask?.kind === 'choice' ? ask.options : [],
    );
    if (piece === undefined) throw new Error(`${id} cannot be ${text}`);
    return [at, piece];
  });
  const index = table.data.units.findIndex(({ id }) => id === unit);
  return { pieces: new Map(pieces), ...(unit === undefined ? {} : { unit: index }) };
};
const codes = (table: TablePageView, indexes: readonly number[]) =>
  indexes.map((index) => table.data.profiles[index]?.code);

test('tests are in words, and what does not matter is “any”', () => {
  const { rules, columns } = page('amplifier-without-reflash');
  const moves = rules.find(({ anchor }) => anchor === 'rule-boost-moves');
  expect(moves?.cells.map(({ words }) => words)).toEqual([
    ...['any', 'any', 'any', 'any'],
    'over 4\u00a0dB',
    'fading, switched off or changing',
    ...['any', 'any'],
  ]);
  expect(columns.filter(({ asked }) => asked).length).toBe(3);
  expect(rules.at(-1)?.always).toBe('Wherever no other rule decides.');
});

test('every profile is under a rule and has an answer, in every table, whatever is said', () => {
  for (const table of pages) {
    const { rules, groups, sure, open } = table.listing;
    const under = new Set(rules.flatMap((rule) => [...rule.sure, ...rule.perhaps]));
    expect(under.size, table.id).toBe(answers.base.profiles.size);
    expect(sure + open, table.id).toBe(answers.base.profiles.size);
    const answered = new Set(
      groups.flatMap(({ parts }) => parts.flatMap(({ profiles }) => profiles.map((one) => one.index))),
    );
    expect(answered.size, table.id).toBe(answers.base.profiles.size);
    expect(groups.map(({ answer }) => answer)).not.toContain('no rule says');
    expect(groups.map(({ answer }) => answer)).not.toContain('the rules contradict each other');
  }
});

test('what the rider says narrows rules and profiles', () => {
  const table = page('amplifier-without-reflash');
  const list = lister(table.data);
  const { rules, groups } = list(
    said(table, { equaliser: 'no', 'rear-wanted': 'yes', 'amp-input': 'speaker level' }),
  );
  const left = table.rules.filter((_, index) => rules[index]?.left).map(({ anchor }) => anchor);
  expect(left).not.toContain('rule-too-hot-for-low-level');
  expect(left).toContain('rule-rear-from-front');
  for (const { parts } of groups) for (const part of parts) expect(partWords(part)).toBe('Surely');
  const rear = groups.find(({ answer }) => answer === 'keep and correct')?.parts[0]?.profiles ?? [];
  expect(
    codes(
      table,
      rear.map(({ index }) => index),
    ),
  ).toContain('5S1I-B80');

  const glasswick = list(said(table, {}, 'glasswick'));
  const names = glasswick.groups.flatMap(({ parts }) =>
    parts.flatMap(({ profiles }) => profiles.map(({ index }) => table.data.profiles[index]?.unit)),
  );
  expect(new Set(names.map((unit) => table.data.units[unit ?? -1]?.id))).toEqual(new Set(['glasswick']));
});

test('a value within its uncertainty of a limit is borderline, is said so, and with what would settle it', () => {
  const table = page('input-of-the-amplifier');
  const { groups } = lister(table.data)(said(table, { has: 'low-level inputs' }, 'dialstone'));
  const open = groups.flatMap(({ parts }) => parts.filter(({ borderline }) => borderline.length > 0));
  expect(open.length).toBe(2);
  for (const part of open) {
    expect(partWords(part)).toBe('Perhaps, borderline: Clean volts');
    expect(
      codes(
        table,
        part.profiles.map(({ index }) => index),
      ),
    ).toEqual(['1.10', '5.08', '6.00']);
    for (const { near } of part.profiles) expect(near).toMatch(/^(3\.99|4\.0\d)\sV\s±\s0\.0\d\sV$/);
  }
  expect(table.settling).toEqual([
    {
      label: 'Clean volts',
      advice:
        'readings of front left at 1 kHz from two or more volume steps, with THD, taken again with a finer meter',
    },
  ]);
});

test('what was typed is held against the bands of the table', () => {
  const table = page('input-of-the-amplifier');
  const takes = table.data.inputs.find(({ id }) => id === 'takes');
  if (!takes) throw new Error('no such input');
  const piece = (text: string) => pieceSaid(takes, text, []);
  expect(piece('8')).not.toBe(piece('7.9'));
  expect(piece('8.5')).toBe(piece('9'));
  expect(piece('50')).toBeDefined();
  for (const none of ['', '-1', '51', 'many', 'Infinity']) expect(piece(none), none).toBeUndefined();
});

test('the script is given no more than it needs', () => {
  for (const { id, data } of pages) {
    const perProfile = JSON.stringify(data.profiles).length / data.profiles.length;
    expect(perProfile, id).toBeLessThan(100);
    expect(JSON.stringify(data).length, id).toBeLessThan(8000);
    expect(data.patterns.length, id).toBeLessThan(data.profiles.length);
  }
});

test('of very many profiles some are listed, and how many more there are', () => {
  const { data } = page('what-to-buy-first');
  const many = {
    ...data,
    profiles: Array.from({ length: 400 }, () => data.profiles[0]).flatMap((one) => one ?? []),
  };
  const { lists, more } = byUnit(
    many,
    many.profiles.map((_, index) => ({ index, note: '' })),
  );
  expect(lists.flatMap(({ profiles }) => profiles).length).toBe(mostListed);
  expect(more).toBe(400 - mostListed);
  expect(underWords(0, 0)).toBe('No profile comes under it');
  expect(underWords(3, 1)).toBe('4\u00a0profiles: 3 surely, 1 perhaps');
});

test('a profile’s page: the answer, the rule, the value, its readings; or the question that decides', () => {
  const views = tableAnswerViews(answers, 'glasswick/0x7e8');
  expect(views.length).toBe(pages.length);
  const [amplifier] = views;
  expect(amplifier?.answer).toBe('reflash');
  const [rule] = amplifier?.rules ?? [];
  expect(rule?.path).toBe('tables/amplifier-without-reflash/#rule-boost-moves');
  expect(rule?.because.map(({ label, test: asked }) => [label, asked])).toEqual([
    ['Greatest bass boost', 'over 4\u00a0dB'],
    ['Boost with volume', 'fading, switched off or changing'],
  ]);
  for (const { found, anchor, readings } of rule?.because ?? []) {
    expect(found).not.toBe('');
    expect(anchor).toMatch(/^value-bass-boost/);
    expect(readings.length).toBeGreaterThan(0);
  }

  const silent = tableAnswerViews(answers, 'brasslight/5s1i-b80')[0];
  expect(silent?.dependsOn).toEqual(['Will the amplifier drive rear speakers?']);
  expect(silent?.rules.map(({ answer, cases }) => [answer, cases])).toEqual([
    ['keep and correct', ['Rear wanted: yes']],
    ['keep', ['Rear wanted: no']],
  ]);
  expect(silent?.rules[1]?.isRest).toBe(true);
});

test('a profile at a limit: borderline, the value with its row, and the reading that settles it', () => {
  const views = tableAnswerViews(answers, 'dialstone/6-00');
  const input = views.find(({ path }) => path.includes('input-of-the-amplifier'));
  expect(input?.borderline).toMatchObject([{ label: 'Clean volts', anchor: 'value-clean-volts' }]);
  expect(input?.borderline[0]?.settledBy).toContain('with a finer meter');
  const cases = input?.rules.flatMap((rule) => rule.cases) ?? [];
  expect(cases).toContain('Clean volts: 4\u00a0V or less');
  expect(cases).toContain('Clean volts: over 4\u00a0V');
});

test('a rule points a profile to others of its own unit only', () => {
  const views = tableAnswerViews(answers, 'glasswick/0x7e8');
  const points = views.flatMap(({ rules }) =>
    rules.flatMap(({ pointsTo }) => pointsTo.map(({ path }) => path)),
  );
  expect(points).toContain('profiles/glasswick/0x5b0/');
  for (const path of points) expect(path).toMatch(/^profiles\/glasswick\//);
});

test('a source lists the tables that rest on it', () => {
  const classes = sourcePages(answers).find(({ id }) => id === 'equipment-classes');
  const tables = classes?.usedBy.find(({ label }) => label === 'Tables')?.links ?? [];
  expect(tables).toContainEqual({
    text: 'An aftermarket amplifier without a reflash',
    path: 'tables/amplifier-without-reflash/',
  });
});

test('a table that decides plans shows its rules, asks nothing and lists no profile', () => {
  const verdict = allPages.find(({ id }) => id === 'plan-verdict');
  expect(verdict?.isForPlans).toBe(true);
  expect(verdict?.asks).toEqual([]);
  expect(verdict?.data.profiles).toEqual([]);
  const quiet = verdict?.rules.find(({ anchor }) => anchor === 'rule-too-quiet');
  expect(quiet?.cells.find(({ label }) => label === 'Level short by')?.words).toBe('over 0\u00a0dB');
});

test('each test of a profile leads to the profiles that pass it: surely, perhaps, and no others', () => {
  const table = page('amplifier-without-reflash');
  const cell = table.rules.find(({ anchor }) => anchor === 'rule-boost-moves')?.cells[4];
  expect(cell).toMatchObject({ label: 'Greatest bass boost', words: 'over 4\u00a0dB' });
  const column = table.tests.find(({ label }) => label === 'Greatest bass boost');
  const found = column?.tests.find(({ anchor }) => anchor === cell?.anchor);
  const expected = [...answers.outputs].flatMap(([id, output]) => {
    const boost = greatestBoost(output);
    const code = answers.base.profiles.get(id)?.data.code;
    return boost && code && boost.value - boost.expandedUncertainty > 4 ? [code] : [];
  });
  expect(codes(table, found?.sure ?? [])).toEqual(expected);
  expect(expected.length).toBeGreaterThan(5);
  const asked = table.rules.flatMap(({ cells }) => cells.filter(({ label }) => label === 'Equaliser'));
  expect(asked.every(({ anchor }) => anchor === '')).toBe(true);
});
