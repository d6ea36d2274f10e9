/** The rules about steps where a coarse meter shows its last digits: what its counts explain is no fault, √2 is. */
import { expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { type SheetRow, simulatedBase } from './simulated-sheets.ts';

/** A good base of one session, its meter of 1 mV and 5 counts, with some of its first profile's steps rewritten. */
async function findingsWith(voltsAtStep: Readonly<Record<number, number>>) {
  const base = baseOfCoarseMeter();
  const [sheet] = base.sheets;
  if (!sheet) throw new Error('no sheet');
  const [first] = sheet.rows;
  const isStep = (row: SheetRow): boolean =>
    row.profile === first?.profile && row.channel === 'FL' && row.hz === 1000;
  sheet.rows = sheet.rows.map((row) => {
    const voltsRms = isStep(row) && row.repeat === 1 ? voltsAtStep[row.step] : undefined;
    return voltsRms === undefined ? row : { ...row, voltsRms };
  });
  return (await checkContent(base.files())).findings.filter(({ severity }) => severity !== 'note');
}

function baseOfCoarseMeter(): ReturnType<typeof simulatedBase> {
  for (let draw = 0; draw < 50; draw += 1) {
    const base = simulatedBase(20260601, `last digits ${draw}`, 1);
    if (base.sheets.every(({ entry }) => /counts: 5 /.test(entry) && /resolutionVolts: 0\.001/.test(entry)))
      return base;
  }
  throw new Error('no base with a coarse meter');
}

test('a step that reads less than the one before by what two times five counts make is no fault', async () => {
  // Both may truly be 6 mV: 4 counts up and 4 down, as a ratio 14 dB.
  expect(await findingsWith({ 1: 0.01, 2: 0.002, 3: 0.007 })).toEqual([]);
});

test('a step that falls by more than the counts of two readings make is one', async () => {
  const found = await findingsWith({ 1: 0.03, 2: 0.002 });
  expect(found.length).toBeGreaterThan(0);
  expect(new Set(found.map(({ rule }) => rule))).toEqual(new Set(['level-falls']));
});

// Five counts are 3 to 7 % of these, and more of the steps before: they are told by them all the same.
test.each([
  ['peak volts written for rms', Math.SQRT2, 0.1],
  ['divided by √2', Math.SQRT1_2, 0.15],
])('a slip by %s in the first step above some volts is named', async (cause, factor, above) => {
  const [sheet] = baseOfCoarseMeter().sheets;
  const [profile] = (sheet?.rows ?? []).map((row) => row.profile);
  const row = sheet?.rows.find(
    (one) => one.profile === profile && one.channel === 'FL' && one.hz === 1000 && one.voltsRms > above,
  );
  if (!row) throw new Error(`no step above ${above} V`);
  const found = await findingsWith({ [row.step]: Number((row.voltsRms * factor).toFixed(4)) });
  expect(found.map(({ rule }) => rule)).toEqual(['unit-slip']);
  expect(found[0]?.message).toContain(cause);
});
