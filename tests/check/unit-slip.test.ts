/**
 * Slips of unit on simulated sheets: good ones raise no alarm, slips put in are named at their first row with
 * their cause. A sample; the long tests count more.
 */
import { expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { slipBetween } from '../../src/check/readings/slip-kinds.ts';
import { simulatedBase } from './simulated-sheets.ts';
import { tallyBad, tallyGood } from './unit-slips.ts';

test('24 good bases of one to three sessions: no finding', async () => {
  expect((await tallyGood(20260501, 24)).wrong).toEqual([]);
});

test('36 slips, each kind four times: at least 33 named once, at their first row, with their cause; none missed', async () => {
  // The others are found as well: a row later where the first one hardly differs, or by another rule.
  const { wrong } = await tallyBad(20260501, 36);
  expect(wrong.length).toBeLessThanOrEqual(3);
  expect(wrong.filter((one) => one.endsWith('nothing'))).toEqual([]);
});

test('a sine’s peak is √2 and its peak-to-peak 2√2 times its rms; 0 dBV is 1 V, 0 dBu √0.6 V (IEC 60027-3, from memory)', () => {
  const kind = (written: number, volts: number) => slipBetween(written, volts, () => 0.02)?.id;
  expect(kind(2.828427, 2)).toBe('peak');
  expect(kind(5.656854, 2)).toBe('peak-to-peak');
  expect(kind(6.0206, 2)).toBe('dbv');
  expect(kind(8.2391, 2)).toBe('dbu');
  expect(kind(2000, 2)).toBe('millivolts');
  expect(kind(0.002, 2)).toBe('thousandth');
  expect(kind(2.03, 2)).toBeUndefined();
  expect(kind(3.6, 2)).toBeUndefined();
});

test('peak volts throughout the only sheet of a profile show where they pass what the supply allows', async () => {
  const { sheets, files } = simulatedBase(3, 'alone', 1);
  const [sheet] = sheets;
  if (!sheet) throw new Error('no sheet');
  sheet.rows = sheet.rows.map((row) =>
    row.profile === 'moorlight/km-4417'
      ? { ...row, voltsRms: Number((row.voltsRms * Math.SQRT2).toFixed(4)) }
      : row,
  );
  const findings = (await checkContent(files())).findings.filter((one) => one.severity !== 'note');
  expect(findings.map(({ rule, message }) => `${rule} ${message}`)).toEqual([
    expect.stringMatching(/^unit-slip .*peak volts written for rms\? It is the first of \d+ such rows\.$/),
  ]);
});
