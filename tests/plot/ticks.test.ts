import { expect, test } from 'vitest';
import { decibelTicks, stepTicks, thirdOctaveTicks, voltRange, voltTicks } from '../../src/plot/ticks.ts';

// Nominal octave mid-band frequencies of ISO 266:1997 within the audio band.
const iso266Octaves = ['31.5', '63', '125', '250', '500', '1k', '2k', '4k', '8k', '16k'];

test('third-octave ticks carry the octave names of ISO 266', () => {
  const ticks = thirdOctaveTicks(20, 20_000);
  expect(ticks.flatMap(({ label }) => label ?? [])).toEqual(iso266Octaves);
});

test('third-octave ticks lie at the exact centres of IEC 61260-1', () => {
  const ticks = thirdOctaveTicks(20, 20_000);
  // 20 Hz to 20 kHz nominal are bands −17 to +13; the exact lowest is 19.95 Hz, below 20.
  expect(ticks).toHaveLength(30);
  // Exact centres as printed in IEC 61260-1:2014, table E.1 (as transcribed): 31.623, 63.096, 7943.3 Hz.
  for (const [label, exact] of [
    ['31.5', 31.623],
    ['63', 63.096],
    ['8k', 7943.3],
  ] as const) {
    const tick = ticks.find((one) => one.label === label);
    expect(Math.abs((tick?.value ?? 0) / exact - 1)).toBeLessThan(2e-5);
  }
  for (const [index, tick] of ticks.entries()) {
    const next = ticks[index + 1];
    if (next) expect(next.value / tick.value).toBeCloseTo(10 ** 0.1, 10);
  }
});

test('volt ticks are 1–2–5, all labelled over two decades, the decades alone over more', () => {
  expect(voltTicks(0.1, 10).map(({ value }) => value)).toEqual([0.1, 0.2, 0.5, 1, 2, 5, 10]);
  expect(voltTicks(0.1, 10).every(({ label }) => label !== undefined)).toBe(true);
  expect(voltTicks(0.001, 10).flatMap(({ label }) => label ?? [])).toEqual([
    '0.001',
    '0.01',
    '0.1',
    '1',
    '10',
  ]);
});

test('the volt range encloses what it is given with 1–2–5 values', () => {
  expect(voltRange(0.063, 10.67)).toEqual([0.05, 20]);
  expect(voltRange(0.1, 10)).toEqual([0.1, 10]);
  expect(voltRange(5, 5)).toEqual([2.5, 10]);
  for (let volts = 0.001; volts < 50; volts *= 1.37) {
    const [lowest, highest] = voltRange(volts, volts * 3);
    expect(lowest).toBeLessThanOrEqual(volts * 1.0001);
    expect(highest).toBeGreaterThanOrEqual(volts * 3 * 0.9999);
  }
});

test('decibel ticks are whole multiples with a sign', () => {
  expect(decibelTicks(-6, 9).map(({ label }) => label)).toEqual(['−6', '−3', '0', '+3', '+6', '+9']);
  expect(decibelTicks(-36, 6).map(({ value }) => value)).toEqual([-36, -30, -24, -18, -12, -6, 0, 6]);
});

test('step ticks have both ends and leave out what would run into them', () => {
  expect(stepTicks(0, 30).map(({ value }) => value)).toEqual([0, 5, 10, 15, 20, 25, 30]);
  expect(stepTicks(1, 32).map(({ value }) => value)).toEqual([1, 5, 10, 15, 20, 25, 32]);
});
