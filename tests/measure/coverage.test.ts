/** A sample of the coverage campaign of tests/long/coverage.test.ts. */
import { expect, test } from 'vitest';
import { boostedUnit, coverage, filteredUnit } from './simulated-bench.ts';

// With 120 benches a share of 95 % scatters by 2 %: three of these either way, and 1 for what is on the safe side.
test.each([
  ['filtered', filteredUnit],
  ['boosted', boostedUnit],
])('120 simulated benches of a %s unit hold the truth about as often as they claim', (_, unit) => {
  const counts = coverage(unit, 120, 7);
  expect(counts.size).toBeGreaterThan(12);
  for (const [name, { benches, within }] of counts) expect(within / benches, name).toBeGreaterThan(0.89);
});
