import { describe, expect, test } from 'vitest';
import {
  dbu,
  dbuReferenceVolts,
  dbv,
  halfPowerDb,
  voltsFromDbu,
  voltsFromDbv,
} from '../../src/measure/index.ts';

describe('levels', () => {
  // Common definitions of audio practice (0 dBu = √0.6 V), as transcribed; figures recomputed independently.
  test('0 dBu is the square root of 0.6 V', () => {
    expect(dbuReferenceVolts).toBeCloseTo(0.7745966692, 10);
  });
  test('+4 dBu and −10 dBV in volts', () => {
    expect(voltsFromDbu(4)).toBeCloseTo(1.227652988, 9);
    expect(voltsFromDbv(-10)).toBeCloseTo(0.316227766, 9);
  });
  test('dBV to dBu is +2.2184875 dB', () => {
    expect(dbu(1) - dbv(1)).toBeCloseTo(2.2184875, 7);
  });
  test.each([
    [2, 6.0206],
    [2.5, 7.9588],
    [4, 12.0412],
    [5, 13.9794],
  ])('%s V is %s dBV', (volts, level) => {
    expect(dbv(volts)).toBeCloseTo(level, 4);
  });
  test('the crest factor of a sine, and half power, is 3.0103 dB', () => {
    expect(dbv(Math.SQRT2)).toBeCloseTo(3.0103, 4);
    expect(halfPowerDb).toBeCloseTo(-3.0103, 4);
  });
});
