import { describe, expect, test } from 'vitest';
import { bandEdges, exactCentre, formatHz, nearestBand, nominalCentre } from '../../src/measure/index.ts';

describe('third-octave bands (IEC 61260-1:2014; nominal ISO 266:1997, as transcribed)', () => {
  test.each([
    [31.5, 31.6228],
    [63, 63.0957],
    [80, 79.4328],
    [160, 158.489],
    [8000, 7943.28],
  ])('nominal %s Hz has the exact centre %s Hz', (nominal, exact) => {
    const band = nearestBand(nominal);
    expect(nominalCentre(band)).toBe(nominal);
    expect(Number(exactCentre(band).toPrecision(6))).toBe(exact);
  });
  test('edges of the 1 kHz band', () => {
    const [lower, upper] = bandEdges(0);
    expect(lower).toBeCloseTo(891.251, 3);
    expect(upper).toBeCloseTo(1122.018, 3);
  });
  test('neighbouring bands share an edge', () => {
    for (let k = -17; k < 13; k += 1) expect(bandEdges(k)[1]).toBeCloseTo(bandEdges(k + 1)[0], 6);
  });
  test('the nominal series from 20 Hz to 20 kHz is that of ISO 266', () => {
    const nominal = Array.from({ length: 31 }, (_, index) => nominalCentre(index - 17));
    expect(nominal).toEqual([
      20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000,
      2500, 3150, 4000, 5000, 6300, 8000, 10_000, 12_500, 16_000, 20_000,
    ]);
  });
  test('a reading at an exact centre is shown by its nominal name, any other by its own', () => {
    expect(formatHz(63.0957)).toBe('63\u00a0Hz');
    expect(formatHz(1258.93)).toBe('1.25\u00a0kHz');
    expect(formatHz(60)).toBe('60\u00a0Hz');
    expect(formatHz(70)).toBe('70\u00a0Hz');
  });
});
