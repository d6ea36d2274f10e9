/** Quantiles of Student's t against a general library, and against printed tables. */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { expect, test } from 'vitest';
import { studentWithin } from '../../src/measure/student.ts';

test('as the library @stdlib/stats-base-dists-t-quantile has them, within a part in 10⁹', () => {
  const degrees = [...Array.from({ length: 320 }, (_, at) => at + 1), 500, 1000, 12_345, 1e6, 1e8];
  for (const within of [0.5, 0.6827, 0.9, 0.95, 0.99, 0.999]) {
    for (const dof of degrees) {
      const wanted = tQuantile((1 + within) / 2, dof);
      expect(Math.abs(studentWithin(within, dof) / wanted - 1), `${within}, ${dof}`).toBeLessThan(1e-9);
    }
  }
});

test('as GUM (JCGM 100:2008) table G.2 prints them', () => {
  const printed: readonly (readonly [dof: number, p9545: number, p95: number, p99: number])[] = [
    [1, 13.97, 12.71, 63.66],
    [2, 4.53, 4.3, 9.92],
    [5, 2.65, 2.57, 4.03],
    [10, 2.28, 2.23, 3.17],
    [50, 2.05, 2.01, 2.68],
  ];
  for (const [dof, p9545, p95, p99] of printed) {
    expect(studentWithin(0.9545, dof)).toBeCloseTo(p9545, 1);
    expect(Math.abs(studentWithin(0.95, dof) - p95)).toBeLessThan(0.0051);
    expect(Math.abs(studentWithin(0.99, dof) - p99)).toBeLessThan(0.0051);
  }
});
