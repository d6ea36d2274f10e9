/** Equaliser settings that take a profile's curve out again. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { togetherDb } from '../../../src/decide/plan/equaliser/curve.ts';
import { descend } from '../../../src/decide/plan/equaliser/least-squares.ts';
import { gridOf } from '../../../src/decide/plan/equaliser/wrong.ts';
import { type Correctable, correction } from '../../../src/decide/plan/index.ts';
import { randomStream } from '../../../src/demo/random.ts';
import { type BoostBehaviour, characterise, type Filter } from '../../../src/measure/index.ts';
import { responseRun, unit } from '../../measure/ideal-unit.ts';
import { equaliser, expectNearReference, randomFilter, worseThanReference } from './random-responses.ts';
import { expectWellTold, line, linesOf, refusalOf } from './told.ts';

/** A profile whose response is that of these filters, read at third octaves to a meter's last digit. */
function profileOf(filters: readonly Filter[], boostBehaviour: BoostBehaviour = 'fixed'): Correctable {
  const levelDb = (hz: number): number => togetherDb(filters, gridOf([hz]))[0] ?? 0;
  return { ...characterise('p', [responseRun(levelDb)], unit), boostBehaviour };
}

const three: readonly Filter[] = [
  { kind: 'low-shelf', hz: 120, gainDb: 6, q: Math.SQRT1_2 },
  { kind: 'peaking', hz: 800, gainDb: -4, q: 1.4 },
  { kind: 'peaking', hz: 3500, gainDb: 5, q: 2.5 },
];

describe('a profile made of filters', () => {
  test('of three known ones is flattened to 0.1 dB, by their opposites', () => {
    const { filters, points, lines } = linesOf(correction(profileOf(three), equaliser));
    expectWellTold(lines);
    expect(points.length).toBeGreaterThan(25);
    for (const { afterDb } of points) expect(Math.abs(afterDb)).toBeLessThan(0.1);
    expect(line(lines, 'residual-largest').result.value).toBeLessThan(0.1);
    expect(line(lines, 'response-rms').result.value).toBeGreaterThan(2);
    expect(line(lines, 'residual-rms').result.expandedUncertainty).toBeGreaterThan(0);
    expect(line(lines, 'residual-rms').readings.length).toBeGreaterThanOrEqual(points.length);
    filters.forEach(({ kind, hz, gainDb }, index) => {
      const made = three[index];
      expect(kind).toBe(made?.kind);
      expect(Math.abs(hz / (made?.hz ?? 1) - 1)).toBeLessThan(0.02);
      expect(Math.abs(gainDb + (made?.gainDb ?? 0))).toBeLessThan(0.1);
    });
  });

  test('of any three the equaliser has is flattened to 0.1 dB', () => {
    for (let seed = 0; seed < 25; seed += 1) {
      const random = randomStream(seed, 'three filters');
      const peaks = Array.from({ length: 3 }, () => ({ ...randomFilter(random), kind: 'peaking' as const }));
      const lines = linesOf(correction(profileOf(peaks), { ...equaliser, hz: [15, 22_000] })).lines;
      expect(line(lines, 'residual-largest').result.value, `seed ${seed}`).toBeLessThan(0.1);
    }
  }, 300_000);

  test('more filters never leave more, and settings stay within the limits', () => {
    fc.assert(
      fc.property(fc.nat(1000), (seed) => {
        const random = randomStream(seed, 'five filters');
        const output = profileOf(Array.from({ length: 5 }, () => randomFilter(random)));
        let before = Number.POSITIVE_INFINITY;
        for (const mostFilters of [0, 1, 2, 3]) {
          const found = linesOf(correction(output, { ...equaliser, mostFilters, gainDb: [-12, 3] }));
          const left = line(found.lines, 'residual-rms').result.value;
          // Rounding of settings may cost a little.
          expect(left).toBeLessThanOrEqual(before + 0.005);
          before = left;
          expect(found.filters.length).toBeLessThanOrEqual(mostFilters);
          for (const { hz, gainDb, q, kind } of found.filters) {
            expect(hz).toBeGreaterThanOrEqual(20);
            expect(hz).toBeLessThanOrEqual(20_000);
            expect(gainDb).toBeLessThanOrEqual(3);
            expect(gainDb).toBeGreaterThanOrEqual(-12);
            expect(q).toBeGreaterThanOrEqual(0.4);
            expect(q).toBeLessThanOrEqual(kind === 'peaking' ? 8 : 1);
          }
          const headroom = line(found.lines, 'correction-headroom').result.value;
          expect(headroom).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 8, seed: 20260314 },
    );
  }, 300_000);

  test('a shelf cuts where it can: a high shelf of +6 dB is, but for the level, a low shelf of −6 dB', () => {
    const grid = gridOf([20, 50, 120, 300, 1000, 20_000]);
    const high = togetherDb([{ kind: 'high-shelf', hz: 120, gainDb: 6, q: 0.8 }], grid);
    const low = togetherDb([{ kind: 'low-shelf', hz: 120, gainDb: -6, q: 0.8 }], grid);
    high.forEach((level, index) => {
      expect(level - (low[index] ?? 0)).toBeCloseTo(6, 9);
    });
    for (const kind of ['low-shelf', 'high-shelf'] as const) {
      const found = linesOf(
        correction(profileOf([{ kind, hz: 300, gainDb: 6, q: Math.SQRT1_2 }]), equaliser),
      );
      expect(found.filters[0]).toMatchObject({ kind });
      expect(line(found.lines, 'correction-headroom').result.value).toBeLessThan(0.1);
      expect(line(found.lines, 'residual-largest').result.value).toBeLessThan(0.05);
    }
  });

  test('another target is met as well', () => {
    const target = (hz: number): number => -2 * Math.log10(hz / 1000);
    const { points } = linesOf(correction(profileOf(three), { ...equaliser, mostFilters: 5 }, target));
    for (const { afterDb } of points) expect(Math.abs(afterDb)).toBeLessThan(0.5);
  });

  test('what lies below a high-pass is left as it is', () => {
    const highPass: Filter = { kind: 'high-pass', hz: 80, gainDb: 0, q: Math.SQRT1_2 };
    const { points } = linesOf(correction(profileOf([highPass]), equaliser));
    expect(points[0]?.hz).toBeGreaterThan(79);
  });
});

test.each(['fading', 'switched', 'changing'] as const)('a boost that is %s is refused', (behaviour) => {
  expect(refusalOf(correction(profileOf(three, behaviour), equaliser))).toContain('changes with the volume');
});

test('without a second step, without a response, or with too few frequencies it is refused with the reason', () => {
  expect(refusalOf(correction(profileOf(three, 'unknown'), equaliser))).toContain('second step');
  const output = profileOf(three);
  expect(refusalOf(correction({ ...output, responses: [] }, equaliser))).toContain('No response');
  const few = output.responses.map((one) => ({ ...one, points: one.points.slice(0, 4) }));
  expect(refusalOf(correction({ ...output, responses: few }, equaliser))).toContain(
    'Too few frequencies were read between 20 and 40 Hz (4)',
  );
});

test('12 random responses: within 0.05 dB of the best of many random starts of Nelder and Mead', () => {
  expectNearReference(worseThanReference(12, 20_260, 4));
}, 600_000);

describe('least squares with bounds', () => {
  // Rosenbrock, Computer Journal 3:175 (1960): least at (1, 1).
  const rosenbrock = (bounds: readonly (readonly [number, number])[]) =>
    descend(
      {
        bounds,
        residuals: ([x = 0, y = 0]) => [10 * (y - x * x), 1 - x],
        slopes: ([x = 0]) => [
          [-20 * x, -1],
          [10, 0],
        ],
      },
      [-1.2, 0.5],
      500,
    );
  test('finds the bottom of Rosenbrock’s valley', () => {
    const { at, cost } = rosenbrock([
      [-5, 5],
      [-5, 5],
    ]);
    expect(cost).toBeLessThan(1e-9);
    expect(at[0]).toBeCloseTo(1, 4);
    expect(at[1]).toBeCloseTo(1, 4);
  });
  test('with y ≤ 0.25 it stops at the best place on that bound', () => {
    const { at } = rosenbrock([
      [-5, 5],
      [-5, 0.25],
    ]);
    // There the derivative by x of 100·(0.25 − x²)² + (1 − x)² is nought.
    const x = at[0] ?? 0;
    expect(-400 * x * (0.25 - x * x) - 2 * (1 - x)).toBeCloseTo(0, 2);
    expect(at[1]).toBe(0.25);
  });
});
