import { describe, expect, test } from 'vitest';
import {
  commonPoints,
  likelierAtFault,
  normalisedErrorLimit,
  pointsOf,
  sharedOffset,
} from '../../src/measure/index.ts';
import { type Row, run, session } from './bench.ts';

const rows: Row[] = Array.from({ length: 20 }, (_, index) => [
  'FL',
  index + 1,
  1000,
  0.05 * 10 ** (index / 10),
  0.1,
]);
const scaled = (factor: number): Row[] =>
  rows.map(([c, step, hz, volts, thd]) => [c, step, hz, volts * factor, thd ?? null]);
const clean = { step: 20, volts: 100 };
const points = (some: Row[], id: string) => pointsOf(run(some, {}, id));

test('a single comparison is judged by |E_n| ≤ 1 (ISO 13528, 9.7); many by more, so that all together are', () => {
  expect(normalisedErrorLimit(1)).toBe(1);
  expect(normalisedErrorLimit(0)).toBe(1);
  // Bonferroni for 100 comparisons: z(1 − 0.025/100)/z(0.975) = 3.4808/1.9600, recomputed with scipy.
  expect(normalisedErrorLimit(100)).toBeCloseTo(3.480756 / 1.959964, 5);
});

test('points in common are those both read, within the clean region', () => {
  const a = points(rows, 'a');
  expect(commonPoints(a, points(rows.slice(5), 'b'), clean)).toHaveLength(15);
  expect(commonPoints(a, points(rows, 'b'), { ...clean, step: 10 })).toHaveLength(10);
  expect(commonPoints(a, points(rows, 'b'), { ...clean, volts: 0.06 })).toHaveLength(1);
});

describe('offset of a whole session', () => {
  const offset = (factor: number) =>
    sharedOffset(commonPoints(points(rows, 'a'), points(scaled(factor), 'b'), clean));
  test('none between equal sheets', () => {
    expect(offset(1)).toMatchObject({ differenceDb: 0 });
  });
  test('within the voltmeters’ specification it agrees, far outside it does not', () => {
    expect(Math.abs(offset(1.005)?.normalisedError ?? 9)).toBeLessThan(1);
    expect(Math.abs(offset(1.05)?.normalisedError ?? 0)).toBeGreaterThan(2);
  });
  test('two sessions of one bench that state no tolerance are held to what their points scatter by', () => {
    const bare = {
      instrument: {
        ...session.instrument,
        accuracy: [{ fromHz: 10, toHz: 1e5, ofReadingPercent: 0, counts: 2 }],
      },
      signal: { ...session.signal, levelToleranceDb: 0 },
      load: { ohms: 4, tolerancePercent: 0 },
    };
    const of = (factor: number) => {
      const [a, b] = [pointsOf(run(rows, bare, 'a')), pointsOf(run(scaled(factor), bare, 'b'))];
      return sharedOffset(commonPoints(a, b, clean))?.normalisedError ?? Number.NaN;
    };
    expect(of(1)).toBe(0);
    expect(Math.abs(of(1.00001))).toBeLessThan(1);
    expect(Math.abs(of(1.05))).toBeGreaterThan(2);
  });
  test('two points are too few to tell', () => {
    expect(
      sharedOffset(commonPoints(points(rows.slice(0, 2), 'a'), points(rows, 'b'), clean)),
    ).toBeUndefined();
  });
});

test('the session whose reading stands out from its neighbours is the likelier at fault', () => {
  const slipped = rows.map(
    ([c, step, hz, volts, thd]): Row => [c, step, hz, step === 10 ? volts * 1.3 : volts, thd ?? null],
  );
  const a = points(rows, 'a');
  const b = points(slipped, 'b');
  const worst = commonPoints(a, b, clean).find((one) => one.a.step === 10);
  expect(worst && likelierAtFault(worst, a, b)).toBe('b');
  expect(worst && likelierAtFault({ ...worst, a: worst.b, b: worst.a }, b, a)).toBe('a');
});
