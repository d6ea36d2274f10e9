import { expect, test } from 'vitest';
import { bandPath, curvePath } from '../../src/plot/outline.ts';
import { clamped, linearScale, logScale } from '../../src/plot/scale.ts';

test('equal differences, and equal ratios, are equal distances', () => {
  const volume = linearScale([0, 40], [100, 300]);
  expect([0, 10, 40, 50].map(volume)).toEqual([100, 150, 300, 350]);
  const volts = logScale([0.1, 10], [250, 50]);
  for (const [value, place] of [
    [0.1, 250],
    [1, 150],
    [Math.sqrt(10), 100],
    [10, 50],
  ] as const) {
    expect(volts(value)).toBeCloseTo(place, 9);
  }
});

test('what lies beyond the ends is put at them, upwards and downwards', () => {
  const ends = [250, 50] as const;
  expect([-1, 0, 5, 10, 12].map(clamped(linearScale([0, 10], ends), ends))).toEqual([250, 250, 150, 50, 50]);
});

test('a curve goes from place to place, a band along one edge and back along the other', () => {
  expect(
    curvePath([
      [1, 2],
      [3.04, 4.06],
      [5, 6],
    ]),
  ).toBe('M1,2L3,4.1L5,6');
  expect(curvePath([])).toBe('');
  expect(curvePath([[1, 2]])).toBe('M1,2Z');
  expect(
    bandPath(
      [
        [1, 1],
        [2, 1],
      ],
      [
        [1, 3],
        [2, 4],
      ],
    ),
  ).toBe('M1,1L2,1L2,4L1,3Z');
  expect(bandPath([], [])).toBe('');
});
