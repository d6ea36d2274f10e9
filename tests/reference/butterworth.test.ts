/**
 * Corners and slopes of Butterworth filters: |H|² = 1/(1 + (f/fc)^(±2n)), −3.0103 dB at fc, 6.0206·n dB an octave
 * beyond (Butterworth, Experimental Wireless 7:536, 1930, from memory; standard filter theory). The filters are
 * read as a bench does: volts at third octaves (IEC 61260-1 centres), rounded to a meter's last digit of 0.1 mV.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { characterise, type ProfileOutput } from '../../src/measure/index.ts';
import { found, responseRun, thirdOctaves, unit, value } from '../measure/ideal-unit.ts';

type Side = 'lower' | 'upper';

function butterworthDb(side: Side, order: number, cornerHz: number): (hz: number) => number {
  return (hz) => -10 * Math.log10(1 + (side === 'lower' ? cornerHz / hz : hz / cornerHz) ** (2 * order));
}

/** Where the filter is −3.0103 dB below its own level at 1 kHz, to which a bench refers every response. */
function halfPowerHz(side: Side, order: number, cornerHz: number): number {
  const power = 2 * 10 ** (-butterworthDb(side, order, cornerHz)(1000) / 10) - 1;
  return side === 'lower' ? cornerHz * power ** (-1 / (2 * order)) : cornerHz * power ** (1 / (2 * order));
}

function read(side: Side, order: number, cornerHz: number, frequencies = thirdOctaves()): ProfileOutput {
  return characterise('p', [responseRun(butterworthDb(side, order, cornerHz), frequencies)], unit);
}

const orders = [1, 2, 3, 4];
const corners: Readonly<Record<Side, readonly number[]>> = {
  lower: [31.5, 40, 56, 63, 71, 80, 100, 125, 140, 160, 200],
  upper: [5000, 6300, 7100, 8000, 9000, 10_000, 11_200, 12_500, 14_000],
};
const filters = (['lower', 'upper'] as const).flatMap((side) =>
  orders.flatMap((order) =>
    corners[side].map((cornerHz) => ({
      kind: side === 'lower' ? 'high-pass' : 'low-pass',
      side,
      order,
      cornerHz,
    })),
  ),
);

describe('read at third octaves', () => {
  test.each(filters)(
    'a $kind of order $order at $cornerHz Hz: corner within 0.5 %, slope within 0.2 dB/oct',
    ({ side, order, cornerHz }) => {
      const output = read(side, order, cornerHz);
      const corner = value(output, `${side}-corner`);
      const truth = halfPowerHz(side, order, cornerHz);
      expect(corner.bound).toBe('exact');
      expect(Math.abs(corner.value / truth - 1)).toBeLessThan(0.005);
      expect(Math.abs(corner.value - truth)).toBeLessThanOrEqual(corner.expandedUncertainty);
      const slope = value(output, `${side}-slope`);
      const offBy = Math.abs(slope.value - 20 * order * Math.log10(2));
      expect(offBy).toBeLessThan(0.2);
      expect(offBy).toBeLessThanOrEqual(slope.expandedUncertainty);
    },
  );

  // From the second order on the filter itself is flat at 1 kHz, and its own corner is read.
  test.each(filters.filter(({ order }) => order > 1))(
    'a $kind of order $order at $cornerHz Hz: the filter’s own corner within 0.5 %',
    ({ side, order, cornerHz }) => {
      const corner = value(read(side, order, cornerHz), `${side}-corner`).value;
      expect(Math.abs(corner / cornerHz - 1)).toBeLessThan(0.005);
    },
  );

  test('of the first order at 200 Hz the filter itself is 0.17 dB down at 1 kHz: the corner is that of the response', () => {
    const corner = value(read('lower', 1, 200), 'lower-corner').value;
    // (fc/f)² = 2·(1 + 0.2²) − 1 = 1.08.
    expect(corner).toBeCloseTo(200 / Math.sqrt(1.08), 1);
  });
});

describe('at the ends of what was read', () => {
  test.each([
    ['lower', 18, 'at-most', 19.95],
    ['lower', 10, 'at-most', 19.95],
    ['upper', 21_000, 'at-least', 19_953],
    ['upper', 40_000, 'at-least', 19_953],
  ] as const)('%s corner at %s Hz, beyond the last reading: %s', (side, cornerHz, bound, endHz) => {
    for (const order of orders) {
      const output = read(side, order, cornerHz);
      const corner = value(output, `${side}-corner`);
      expect(corner.bound, `order ${order}`).toBe(bound);
      expect(Math.abs(corner.value / endHz - 1), `order ${order}`).toBeLessThan(0.001);
      expect(found(output, `${side}-slope`), `order ${order}`).toBeUndefined();
    }
  });

  test.each([
    ['lower', 20],
    ['lower', 25],
    ['upper', 16_000],
    ['upper', 18_000],
  ] as const)(
    '%s corner at %s Hz, one or two readings past it: the corner, no slope, and why',
    (side, cornerHz) => {
      for (const order of orders) {
        const output = read(side, order, cornerHz);
        const corner = value(output, `${side}-corner`);
        expect(corner.bound, `order ${order}`).toBe('exact');
        const truth = halfPowerHz(side, order, cornerHz);
        expect(Math.abs(corner.value / truth - 1), `order ${order}`).toBeLessThan(0.005);
        expect(found(output, `${side}-slope`), `order ${order}`).toBeUndefined();
        expect(output.missing).toContainEqual({
          name: `${side}-slope`,
          reason: `needs more readings of front left ${side === 'lower' ? 'below its lower' : 'above its upper'} corner`,
        });
      }
    },
  );
});

/** False where a value said to be exact misses the truth by more than `share` of its uncertainty, or a bound is none. */
function holds(output: ProfileOutput, side: Side, truthHz: number, share = 1): boolean {
  const corner = found(output, `${side}-corner`);
  if (!corner) return true;
  if (corner.bound === 'at-most') return truthHz <= corner.value * 1.0001;
  if (corner.bound === 'at-least') return truthHz >= corner.value / 1.0001;
  return Math.abs(corner.value - truthHz) <= share * corner.expandedUncertainty;
}

describe('read too coarsely', () => {
  test.each([
    ['lower', 8, 45, 6, 'at-most', 63.1],
    ['lower', 2, 30, 10, 'at-most', 100],
    ['upper', 8, 10_000, 6, 'at-least', 3981],
  ] as const)(
    '%s corner, order %s at %s Hz, every %s third octaves: a bound, %s %s Hz',
    (side, order, cornerHz, spacing, bound, boundHz) => {
      const corner = value(read(side, order, cornerHz, thirdOctaves(spacing)), `${side}-corner`);
      expect(corner.bound).toBe(bound);
      expect(Math.abs(corner.value / boundHz - 1)).toBeLessThan(0.001);
    },
  );

  test('any order, corner and spacing: within its uncertainty, or a bound that holds, or nothing', () => {
    let exact = 0;
    fc.assert(
      fc.property(
        fc.constantFrom<Side>('lower', 'upper'),
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 10 }),
        (side, order, place, spacing) => {
          const cornerHz = side === 'lower' ? 20 * 10 ** place : 5000 * 3.6 ** place;
          const output = read(side, order, cornerHz, thirdOctaves(spacing));
          if (found(output, `${side}-corner`)?.bound === 'exact') exact += 1;
          expect(holds(output, side, halfPowerHz(side, order, cornerHz))).toBe(true);
        },
      ),
      { numRuns: 600, seed: 20260314 },
    );
    expect(exact).toBeGreaterThan(150);
  });
});

describe('a bass boost above a high-pass', () => {
  // The analogue prototype of the Audio EQ Cookbook’s peaking filter (W3C Note, 2021).
  const peakDb = (hz: number, atHz: number, gainDb: number, q: number): number => {
    const [a, w] = [10 ** (gainDb / 40), hz / atHz];
    return 20 * Math.log10(Math.hypot(1 - w * w, (w * a) / q) / Math.hypot(1 - w * w, w / (a * q)));
  };

  test('300 of them at third octaves: 95 % of corners within their uncertainty, all within twice it', () => {
    const judged = { within: 0, farOff: 0, of: 0 };
    fc.assert(
      fc.property(
        fc.record({
          order: fc.integer({ min: 1, max: 4 }),
          cornerHz: fc.double({ min: 20, max: 70, noNaN: true }),
          boostHz: fc.double({ min: 40, max: 110, noNaN: true }),
          gainDb: fc.double({ min: 3, max: 9, noNaN: true }),
          q: fc.double({ min: 0.7, max: 1.6, noNaN: true }),
        }),
        ({ order, cornerHz, boostHz, gainDb, q }) => {
          const filterDb = butterworthDb('lower', order, cornerHz);
          const levelDb = (hz: number): number => filterDb(hz) + peakDb(hz, boostHz, gainDb, q);
          const relativeDb = (hz: number): number => levelDb(hz) - levelDb(1000);
          // The first fall through −3.0103 dB below 1 kHz, looked for in steps of 1 %, then halved down.
          let inside = 1000;
          while (relativeDb(inside / 1.01) > 10 * Math.log10(0.5)) inside /= 1.01;
          let outside = inside / 1.01;
          for (let halving = 0; halving < 50; halving += 1) {
            const middle = Math.sqrt(inside * outside);
            if (relativeDb(middle) > 10 * Math.log10(0.5)) inside = middle;
            else outside = middle;
          }
          const output = characterise('p', [responseRun(levelDb)], unit);
          judged.of += 1;
          if (holds(output, 'lower', inside)) judged.within += 1;
          if (!holds(output, 'lower', inside, 2)) judged.farOff += 1;
        },
      ),
      { numRuns: 300, seed: 20260314 },
    );
    expect(judged.of).toBe(300);
    expect(judged.within / judged.of).toBeGreaterThanOrEqual(0.95);
    expect(judged.farOff).toBe(0);
  });
});
