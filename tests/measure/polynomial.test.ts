import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Polynomial } from '../../src/measure/polynomial.ts';

/** 2 − 3x + x² − 4x³ with its derivatives, at nodes 0, 1, 2.5 and 4. */
const cubic = (x: number): number => 2 - 3 * x + x ** 2 - 4 * x ** 3;
const nodes = [0, 1, 2.5, 4];
const through = new Polynomial(nodes, nodes.map(cubic));

it('a cubic through four of its points is itself, with slope and curvature', () => {
  fc.assert(
    fc.property(fc.double({ min: -3, max: 6, noNaN: true }), (x) => {
      expect(through.at(x)).toBeCloseTo(cubic(x), 8);
      expect(through.slopeAt(x)).toBeCloseTo(-3 + 2 * x - 12 * x ** 2, 8);
      expect(through.curvatureAt(x)).toBeCloseTo(2 - 24 * x, 8);
    }),
  );
});

it('weights and their slopes give value and slope back from the nodes', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 4, noNaN: true }), (x) => {
      const sum = (weights: readonly number[]): number =>
        weights.reduce((total, weight, index) => total + weight * cubic(nodes[index] ?? 0), 0);
      expect(sum(through.weightsAt(x))).toBeCloseTo(through.at(x), 8);
      expect(sum(through.weightSlopesAt(x))).toBeCloseTo(through.slopeAt(x), 8);
    }),
  );
});

it('the straight line is that of the first two nodes', () => {
  expect(through.straightAt(0.5)).toBeCloseTo((cubic(0) + cubic(1)) / 2, 12);
});
