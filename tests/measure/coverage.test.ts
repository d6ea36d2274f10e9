/** A sample of the coverage campaign of tests/long/coverage.test.ts. */
import { expect, test } from 'vitest';
import { coverage } from './simulated-bench.ts';

// With 120 benches a share of 95 % scatters by 2 %: three of these either way, and 1 for what is on the safe side.
test.each(['filtered', 'boosted', 'boosted-and-filtered'] as const)(
  '120 simulated benches of %s units hold the truth about as often as they claim',
  (kind) => {
    const counts = coverage(kind, 120, 7);
    expect(counts.size).toBeGreaterThan(12);
    for (const [name, { benches, within }] of counts) expect(within / benches, name).toBeGreaterThan(0.89);
  },
);
