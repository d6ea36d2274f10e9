/** Wires, drops, currents and times against standards and handbook tables. */
import { describe, expect, test } from 'vitest';
import { bladeAmperes } from '../../src/decide/plan/fuse.ts';
import { given, workedOut } from '../../src/decide/plan/line.ts';
import {
  voltageDrop,
  wireCarries,
  wireDiameter,
  wireResistance,
  wireTable,
} from '../../src/decide/plan/wire.ts';
import { formatQuantity, quantity } from '../../src/measure/index.ts';

const ohmsPerKm = (gauge: number, celsius = 20): number =>
  wireResistance(gauge, celsius).at(-1)?.result.value ?? 0;
/** Thousand feet in a kilometre: 1 ft = 0.3048 m. */
const perKilofoot = 0.3048;

describe('ASTM B258 (as transcribed)', () => {
  test('AWG 36 is 0.127 mm, AWG 4/0 0.46 in = 11.684 mm: the two ends of its definition', () => {
    expect(wireDiameter(36).result.value).toBeCloseTo(0.127, 12);
    expect(wireDiameter(-3).result.value).toBeCloseTo(11.684, 9);
  });
});

test.each([
  // Ω/km recomputed independently from ASTM B258 and IEC 60028; Ω/kft as printed in NBS Handbook 100 (1966).
  [4, 0.81517, 0.2485],
  [8, 2.06099, 0.6282],
  [10, 3.27711, 0.9989],
  [12, 5.21081, 1.588],
  [16, 13.17448, 4.016],
])('AWG %s: %s Ω/km at 20 °C, %s Ω/kft in the handbook', (gauge, perKm, perKft) => {
  expect(ohmsPerKm(gauge)).toBeCloseTo(perKm, 4);
  expect(Math.abs((ohmsPerKm(gauge) * perKilofoot) / perKft - 1)).toBeLessThan(5e-4);
});

test.each([
  // NEC (NFPA 70), chapter 9, table 8, solid uncoated copper at 75 °C, as transcribed.
  [14, 3.07],
  [12, 1.93],
  [10, 1.21],
  [8, 0.764],
])('AWG %s: %s Ω/kft at 75 °C', (gauge, perKft) => {
  expect(Math.abs((ohmsPerKm(gauge, 75) * perKilofoot) / perKft - 1)).toBeLessThan(0.005);
});

test('40 A through 2 m of AWG 8, 4 m there and back: 0.32976 V, 2.290 % of 14.4 V (recomputed independently)', () => {
  const current = workedOut({
    id: 'current',
    symbol: 'I',
    formula: 'I_0',
    given: [given('I_0', 'current', 40, 'A')],
    unit: 'A',
  });
  const resistance = wireResistance(8, 20).at(-1);
  if (!resistance) throw new Error('no resistance');
  const [drop, share] = voltageDrop(current, 2, 14.4, resistance);
  expect(drop.result.value).toBeCloseTo(0.32976, 5);
  expect(share.result.value).toBeCloseTo(2.29, 3);
});

describe('what a wire carries', () => {
  const carries = (amperes: number, celsius: number): number =>
    wireCarries(8, amperes, celsius).at(-1)?.result.value ?? 0;
  test.each([
    // NEC table 310.15(B)(1), 60 °C column, factors at the upper end of each band of temperatures; from memory.
    [40, 0.82],
    [45, 0.71],
    [50, 0.58],
    [55, 0.41],
  ])('at %s °C around it %s of the table', (celsius, factor) => {
    expect(carries(100, celsius) / 100).toBeCloseTo(factor, 2);
  });
  test('never more than the table where it is cool', () => {
    expect(carries(40, 0)).toBe(40);
  });
  test('NEC 240.4(D) and table 310.16, column of 60 °C, as transcribed', () => {
    expect(wireTable.map(({ gauge, amperes }) => [gauge, amperes])).toEqual([
      [18, 7],
      [16, 10],
      [14, 15],
      [12, 20],
      [10, 30],
      [8, 40],
      [6, 55],
      [4, 70],
      [2, 95],
    ]);
  });
});

test('blade fuses are those of ISO 8820-3 (as transcribed)', () => {
  expect(bladeAmperes).toEqual([2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40]);
});

test('gauges are written as the trade does', () => {
  const written = (gauge: number): string =>
    formatQuantity(quantity(gauge, 'AWG', [])).replace('\u00a0', ' ');
  expect([8, 1, 0, -1, -3].map(written)).toEqual(['AWG 8', 'AWG 1', 'AWG 1/0', 'AWG 2/0', 'AWG 4/0']);
});
