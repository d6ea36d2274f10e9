import { describe, expect, it } from 'vitest';
import { highPassDb, lowPassDb, lowShelfDb, peakDb } from '../../src/measure/filter-levels.ts';

// Levels of the digital filters of the W3C Note "Audio EQ Cookbook" (2021) at 48 kHz, recomputed with an
// independent program. Far below half the sampling rate they and their analogue prototypes are one.
describe('filters of the Audio EQ Cookbook', () => {
  it.each([
    [20, 8.98293],
    [40, 8.73672],
    [63, 7.64063],
    [80, 6.25607],
    [100, 4.5],
  ])('low shelf of 9 dB, middle 100 Hz, slope 1, at %f Hz', (hz, db) => {
    expect(lowShelfDb(hz, 100, 9, Math.SQRT1_2)).toBeCloseTo(db, 3);
  });

  it.each([
    [20, 0.00129],
    [63, 0.01291],
    [100, 0.0328],
    [1000, 6],
  ])('peak of 6 dB at 1 kHz, Q √2, at %f Hz', (hz, db) => {
    expect(peakDb(hz, 1000, 6, Math.SQRT2)).toBeCloseTo(db, 3);
  });

  it.each([
    [20, -24.09948],
    [40, -12.3046],
    [63, -5.56324],
    [80, -3.0103],
    [100, -1.49093],
  ])('second-order high-pass at 80 Hz, at %f Hz', (hz, db) => {
    expect(highPassDb(hz, 80, 2)).toBeCloseTo(db, 3);
  });
});

it.each([1, 2, 3, 4])('a Butterworth filter of order %i is half power at its corner', (order) => {
  // 10·log10(1/2) by definition of the corner.
  expect(highPassDb(120, 120, order)).toBeCloseTo(-3.0103, 4);
  expect(lowPassDb(120, 120, order)).toBeCloseTo(-3.0103, 4);
  // One decade into the stop band a filter of order n is 20·n dB down.
  expect(highPassDb(12, 120, order)).toBeCloseTo(-20 * order, 1);
});
