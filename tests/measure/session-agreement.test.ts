import { expect, test } from 'vitest';
import { characterise } from '../../src/measure/index.ts';
import { agreementSentence } from '../../src/views/behaviour.ts';
import { type Row, run } from './bench.ts';

/** A unit of even steps whose scale reads `factor` times as much on one bench. */
const rows = (factor: number): Row[] =>
  [10, 11, 12, 13].map((step) => ['FL', step, 1000, factor * 10 ** ((step - 13) / 10), 0.1]);
const bench = (factor: number, id: string) => run(rows(factor), { bench: id }, id);
const unit = { ratedLoadOhms: 4, highestStep: 40 };
const of = (...factors: readonly number[]) =>
  characterise(
    'p',
    factors.map((factor, index) => bench(factor, 'abc'[index] ?? '')),
    unit,
  );

test('two benches within their uncertainties agree, and the page says so', () => {
  const { agreement } = of(1, 1.004);
  expect(agreement).toMatchObject({ sessions: ['a', 'b'], step: 13, consistent: true, betweenBenchVolts: 0 });
  // The weighted mean lies between; with u₁ ≈ u₂ = u, χ² = d²/2u² and E_n = d/(k·u·√2), so χ² = (k·E_n)².
  const { test, largestNormalisedError } = agreement ?? { test: { chiSquare: 0 }, largestNormalisedError: 0 };
  expect(Math.sqrt(test.chiSquare) / largestNormalisedError).toBeGreaterThan(1.7);
  expect(Math.sqrt(test.chiSquare) / largestNormalisedError).toBeLessThan(2);
  expect(agreementSentence(of(1, 1.004))).toMatch(
    /^Sessions a, b read the level at step 13 and agree \(largest/,
  );
});

test('of three benches the two that agree are the largest consistent subset', () => {
  const output = of(1, 1.05, 1.003);
  expect(output.agreement).toMatchObject({ consistent: false, agreeing: ['a', 'c'] });
  expect(output.agreement?.betweenBenchVolts).toBeGreaterThan(0.01);
  expect(agreementSentence(output)).toMatch(/do not agree \(.*\): a, c agree, b stands apart\. All are kept/);
});

test('two benches far apart have no majority', () => {
  expect(agreementSentence(of(1, 1.2))).toMatch(/no two of them agree/);
});

test('a single session has nothing to agree with', () => {
  expect(of(1).agreement).toBeUndefined();
  expect(agreementSentence(of(1))).toBeUndefined();
});
