/** Conditioning against the textbook's bivariate formula, and against regression on 400 000 simulated draws. */
import { describe, expect, test } from 'vitest';
import { observe } from '../../src/decide/identify/gaussian.ts';
import {
  covarianceOf,
  type Expected,
  type Hypothesis,
  jointOf,
  ownVariance,
} from '../../src/decide/identify/hypothesis.ts';
import { randomStream } from '../../src/demo/random.ts';

function normal(x: number, mean: number, sd: number): number {
  return Math.exp(-(((x - mean) / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));
}

describe('conditioning', () => {
  test('two values: mean ρσ₂/σ₁·(x − μ₁) + μ₂, variance σ₂²(1 − ρ²) (textbook bivariate normal)', () => {
    const [s1, s2, rho] = [2, 0.5, 0.8];
    const observed = observe({ mean: [1], covariance: [[s1 ** 2]] }, [4]);
    const { mean, variance } = observed.condition({
      mean: -3,
      variance: s2 ** 2,
      covariances: [rho * s1 * s2],
    });
    expect(mean).toBeCloseTo(-3 + ((rho * s2) / s1) * (4 - 1), 12);
    expect(variance).toBeCloseTo(s2 ** 2 * (1 - rho ** 2), 12);
    expect(observed.logDensity).toBeCloseTo(Math.log(normal(4, 1, s1)), 12);
  });

  test('densities multiply: p(a, b) = p(a)·p(b | a)', () => {
    const covariance = [
      [4, 1.5, 0.3],
      [1.5, 2, -0.2],
      [0.3, -0.2, 1],
    ];
    const mean = [0, 1, -1];
    const values = [0.7, 2.2, -1.9];
    const first = observe(
      { mean: mean.slice(0, 2), covariance: covariance.slice(0, 2).map((row) => row.slice(0, 2)) },
      values.slice(0, 2),
    );
    const next = first.condition({ mean: -1, variance: 1, covariances: [0.3, -0.2] });
    const all = observe({ mean, covariance }, values).logDensity;
    expect(first.logDensity + Math.log(normal(-1.9, next.mean, Math.sqrt(next.variance)))).toBeCloseTo(
      all,
      12,
    );
  });

  test('agrees with regression on simulated offsets, allowances and errors', () => {
    const hypothesis: Hypothesis = {
      prior: 1,
      predict: () => undefined,
      offsetDb: 3,
      alike: { steps: 8, octaves: 1, frontToRear: 0.5 },
    };
    const at = (step: number, perOffset: number, allowanceDb: number): Expected => ({
      channel: 'FL',
      step,
      hz: 63,
      uncertaintyDb: 0.25,
      prediction: { levelDbv: 0, perOffset, ownDb: 0.1, allowanceDb, headroomDb: 10 },
    });
    const points = [at(10, 1, 1.5), at(14, 1, 2), at(24, 0.4, 0.5)] as const;
    const [a, b, next] = points;

    // Allowances over steps are an Ornstein–Uhlenbeck process, drawn step by step without any matrix.
    const random = randomStream(5, 'conditioning');
    const sums = { aa: 0, ab: 0, bb: 0, an: 0, bn: 0, nn: 0 };
    const draws = 400_000;
    for (let i = 0; i < draws; i += 1) {
      const offset = 3 * random.gaussian();
      let process = random.gaussian();
      let step = 10;
      const [ya, yb, yn] = points.map((point) => {
        const kept = Math.exp(-(point.step - step) / 8);
        process = kept * process + Math.sqrt(1 - kept ** 2) * random.gaussian();
        step = point.step;
        const { perOffset, allowanceDb } = point.prediction;
        return perOffset * offset + allowanceDb * process + Math.hypot(0.25, 0.1) * random.gaussian();
      }) as [number, number, number];
      sums.aa += ya * ya;
      sums.ab += ya * yb;
      sums.bb += yb * yb;
      sums.an += ya * yn;
      sums.bn += yb * yn;
      sums.nn += yn * yn;
    }
    const determinant = sums.aa * sums.bb - sums.ab ** 2;
    const onA = (sums.an * sums.bb - sums.bn * sums.ab) / determinant;
    const onB = (sums.bn * sums.aa - sums.an * sums.ab) / determinant;
    const residual = (sums.nn - onA * sums.an - onB * sums.bn) / draws;

    const given = (values: readonly number[]): { mean: number; variance: number } =>
      observe(jointOf(hypothesis, [a, b]), values).condition({
        mean: 0,
        variance: covarianceOf(hypothesis, next, next) + ownVariance(next),
        covariances: [covarianceOf(hypothesis, a, next), covarianceOf(hypothesis, b, next)],
      });
    // Five standard errors of the simulation: of a slope √(residual/(n·(1−r²)·variance)), of a variance √(2/n).
    expect(Math.abs(given([1, 0]).mean - onA)).toBeLessThan(0.008);
    expect(Math.abs(given([0, 1]).mean - onB)).toBeLessThan(0.008);
    expect(given([1, 2]).variance / residual).toBeCloseTo(1, 2);
  });

  test('a covariance that is none is refused', () => {
    expect(() =>
      observe(
        {
          mean: [0, 0],
          covariance: [
            [1, 2],
            [2, 1],
          ],
        },
        [0, 0],
      ),
    ).toThrow(RangeError);
  });
});
