/** By how many U values moved, held against the formula worked by hand. */
import { expect, test } from 'vitest';
import { flipsOf, normalisedDifference } from '../../src/impact/index.ts';
import { headlineValue } from '../../src/measure/index.ts';
import { exampleFiles } from '../check/example-base.ts';
import { exampleAnswers, impactFrom, withVolts } from './edited.ts';

const sheet = 'outputs/2025-05-shed/readings.csv';
const text = exampleFiles.get(sheet) ?? '';
const profile = 'moorlight/kn-2093';
const before = await exampleAnswers();
const after = async (edit: (text: string) => string) => {
  const bad = edit(text);
  return await exampleAnswers([{ file: sheet, good: text, bad }]);
};

/** The only session that measured the profile, all its readings times a factor. */
const times = (factor: number) =>
  after(
    withVolts(
      ([id]) => id === profile,
      (volts) => volts * factor,
    ),
  );

// E_n of two results, ISO 13528:2022, 9.7: (x − X) ∕ √(U²(x) + U²(X)); here 3-4-5 by hand.
test('the ratio is E_n: 10 apart, with U of 3 and 4, is 2 U', () => {
  const value = (one: number, expandedUncertainty: number) =>
    ({ value: one, expandedUncertainty, bound: 'exact' }) as const;
  expect(normalisedDifference(value(0, 3), value(10, 4))).toBe(2);
  expect(normalisedDifference(value(10, 4), value(0, 3))).toBe(-2);
  expect(normalisedDifference(value(24, 0), value(25, 0))).toBe(Number.POSITIVE_INFINITY);
  expect(normalisedDifference(value(24, 0), value(24, 0))).toBe(0);
});

test('readings 2 % higher: clean volts go up by 2 %, which is so many U as the two results give by hand', async () => {
  const now = await times(1.02);
  const [one, ...more] = impactFrom(before, now).profiles;
  expect(more).toEqual([]);
  expect(one?.profile).toBe(profile);
  const change = one?.values.find(({ name }) => name === 'clean-volts');
  const [was, is] = [before, now].map(({ outputs }) => {
    const output = outputs.get(profile);
    return output && headlineValue(output, 'clean-volts');
  });
  if (!was || !is || !change?.before || !change.now) throw new Error('there are no clean volts');
  // Read at step 24, to four digits.
  expect(change.now.value / change.before.value).toBeCloseTo(1.02, 3);
  expect(change.difference).toBeCloseTo(0.02 * was.value, 3);
  const u = Math.sqrt(was.expandedUncertainty ** 2 + is.expandedUncertainty ** 2);
  expect(change.inUnitsOfU).toBeCloseTo((is.value - was.value) / u, 10);
  // Gain 0.5 % and 5 digits of 0.1 mV, level 0.05 dB, load 1 %, each as limits: U is about 1 %, so √2 of it 1.4 %.
  expect(change.inUnitsOfU).toBeGreaterThan(1.2);
  expect(change.inUnitsOfU).toBeLessThan(2.2);
  expect(change.hasMoved).toBe(true);
  expect(change.causes).toEqual([{ kind: 'outputs', id: '2025-05-shed' }]);
});

test('readings 0.2 % higher move nothing beyond its uncertainty', async () => {
  const [one] = impactFrom(before, await times(1.002)).profiles;
  const change = one?.values.find(({ name }) => name === 'clean-volts');
  expect(change?.hasMoved).toBe(false);
  expect(Math.abs(change?.inUnitsOfU ?? 9)).toBeLessThan(0.3);
  expect(one && flipsOf(one)).toEqual([]);
});

test('one reading more or less shows in the profile it is of, and in no other', async () => {
  const row = 'moorlight/kn-2093,FL,16,1000';
  const without = (sheetText: string) =>
    sheetText
      .split('\n')
      .filter((line) => !line.startsWith(row))
      .join('\n');
  const { profiles, sheets } = impactFrom(before, await after(without));
  expect(profiles.map(({ profile: id }) => id)).toEqual([profile]);
  const rows = sheets.of('2025-05-shed', profile);
  expect(rows).toMatchObject({ added: [], changed: [] });
  expect(rows.removed).toBeGreaterThan(0);
});

test('what cannot be worked out any more counts as an answer that changed, what became known does not', async () => {
  const frontAlone = (sheetText: string) =>
    sheetText
      .split('\n')
      .filter((line) => !/^moorlight\/kn-2093,R/.test(line))
      .join('\n');
  const fewer = await after(frontAlone);
  const gone = impactFrom(before, fewer).profiles[0];
  const rear = gone?.values.find(({ name }) => name === 'rear-to-front');
  expect(rear).toMatchObject({ now: undefined, hasMoved: true, inUnitsOfU: undefined });
  expect(gone && flipsOf(gone).map((flip) => flip.of === 'value' && flip.name)).toContain('rear-to-front');
  const back = impactFrom(fewer, before).profiles[0];
  expect(back?.values.find(({ name }) => name === 'rear-to-front')).toMatchObject({ before: undefined });
  expect(back && flipsOf(back).map((flip) => flip.of === 'value' && flip.name)).not.toContain(
    'rear-to-front',
  );
});
