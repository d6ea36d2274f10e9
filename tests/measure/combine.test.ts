import { expect, test } from 'vitest';
import { combine, limits, quantity } from '../../src/measure/index.ts';

const value = (at: number, uncertainty = 0.1) =>
  quantity(at, 'dB', [{ name: 'made up', standardUncertainty: uncertainty, degreesOfFreedom: 50 }]);
const hasDeviation = (values: number[], judgedTogether?: number): boolean =>
  combine(
    values.map((at) => value(at)),
    judgedTogether,
  ).budget.some((one) => one.name === 'between benches');

// χ² of two values 0.3 apart with u = 0.1 each is 4.5; Pr(χ²(1) > 4.5) = 0.034, recomputed with scipy.
test('values too far apart get a deviation between benches', () => {
  expect(hasDeviation([0, 0.3])).toBe(true);
  expect(hasDeviation([0, 0.1])).toBe(false);
});

test('one of thirty values judged together may be that far apart by chance, but not much further', () => {
  expect(hasDeviation([0, 0.3], 30)).toBe(false);
  expect(hasDeviation([0, 0.6], 30)).toBe(true);
});

test('a bound gives way to a value, and of bounds alone the first stands', () => {
  const bound = quantity(20, 'Hz', [], 'at-most');
  expect(combine([bound, value(25)]).value).toBe(25);
  expect(combine([bound, quantity(16, 'Hz', [], 'at-most')])).toBe(bound);
});

test('an influence both values share is counted once with its weights, not averaged away', () => {
  const shared = () => quantity(1, 'V', [limits('voltmeter gain', 0.3, 'gain'), limits('counts', 0.01)]);
  const together = combine([shared(), shared()]);
  const gain = together.budget.find((one) => one.id === 'gain');
  expect(gain?.standardUncertainty).toBeCloseTo(0.3 / Math.sqrt(3), 12);
});
