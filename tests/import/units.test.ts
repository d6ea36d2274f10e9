import { describe, expect, test } from 'vitest';
import {
  hertz,
  hzUnitOf,
  noVoltsIn,
  thdPercent,
  thdUnitOf,
  voltsRms,
  voltsUnitOf,
} from '../../src/import/units.ts';

describe('levels become volts rms', () => {
  // dBu: 0 dBu = √0.6 V, dBV: 0 dBV = 1 V (IEC 60268-2 and AES usage; figures recomputed independently).
  test.each([
    [0, 'dBu', 0.7745966692],
    [4, 'dBu', 1.227652988],
    [-10, 'dBV', 0.316227766],
    [0, 'dBV', 1],
  ] as const)('%d %s is %d V', (value, unit, volts) => {
    expect(voltsRms(value, unit)).toBeCloseTo(volts, 5);
  });

  test('2, 2.5, 4 and 5 V are 6.0206, 7.9588, 12.0412 and 13.9794 dBV (recomputed)', () => {
    const levels = [6.0206, 7.9588, 12.0412, 13.9794];
    expect(levels.map((level) => Number(voltsRms(level, 'dBV').toPrecision(5)))).toEqual([2, 2.5, 4, 5]);
  });

  // A sine has a crest factor of 3.0103 dB (√2).
  test('peaks of a sine', () => {
    expect(voltsRms(2.828427, 'Vpp')).toBeCloseTo(1, 6);
    expect(20 * Math.log10(1 / voltsRms(1, 'Vp'))).toBeCloseTo(3.0103, 4);
    expect(voltsRms(2828.427, 'mVpp')).toBeCloseTo(1, 6);
  });

  test('thousandths without the noise of binary fractions', () => {
    expect(voltsRms(350, 'mV')).toBe(0.35);
    expect(voltsRms(7590.5, 'mV')).toBe(7.5905);
    expect(voltsRms(0.1 + 0.2, 'V')).toBe(0.1 + 0.2);
  });
});

test('distortion as a ratio and in dB (IEC 60268-3: relative to the fundamental)', () => {
  expect(thdPercent(0.00142, 'ratio')).toBe(0.142);
  expect(thdPercent(-40, 'dB')).toBe(1);
  expect(thdPercent(40, 'dB')).toBe(1);
  expect(thdPercent(0.142, '%')).toBe(0.142);
});

test('kilohertz', () => {
  expect(hertz(1.25, 'kHz')).toBe(1250);
  expect(hertz(31.5, 'Hz')).toBe(31.5);
});

test('units as they are written', () => {
  expect(['V', 'Volts', 'V rms', 'Veff', 'VAC', 'voltios'].map(voltsUnitOf)).toEqual(Array(6).fill('V'));
  expect(['mV', 'mVrms', 'millivolts'].map(voltsUnitOf)).toEqual(Array(3).fill('mV'));
  expect(['µV', 'μV', 'uV'].map(voltsUnitOf)).toEqual(Array(3).fill('µV'));
  expect(['dBV', 'dbv', 'dBu', 'Vpp', 'V p-p', 'Vss', 'Vpk'].map(voltsUnitOf)).toEqual([
    'dBV',
    'dBV',
    'dBu',
    'Vpp',
    'Vpp',
    'Vpp',
    'Vp',
  ]);
  expect(['W', 'dBm', 'constructor', ''].map(voltsUnitOf)).toEqual(Array(4).fill(undefined));
  expect(['%', 'Prozent', 'ratio', 'dB'].map(thdUnitOf)).toEqual(['%', '%', 'ratio', 'dB']);
  expect(['Hz', 'kHz', 'k', 'hertz'].map(hzUnitOf)).toEqual(['Hz', 'kHz', 'kHz', 'Hz']);
});

test('what no volts follow from is said', () => {
  expect(noVoltsIn('dBm')).toMatch(/resistance/);
  expect(noVoltsIn('dBFS')).toMatch(/signal/);
  expect(noVoltsIn('mV')).toBeUndefined();
});
