/**
 * Coverage: over 1000 simulated benches an interval of 95 % is to hold the truth in 93 to 97 % for every
 * continuous characteristic; a stated set of steps in at least 95 %. (GUM, JCGM 100:2008, 6: what an expanded
 * uncertainty claims.) npm test runs a sample of it.
 */
import { describe, expect, test } from 'vitest';
import { coverage } from '../measure/simulated-bench.ts';

const steps = ['highest-clean-step', 'boosted-clean-step', 'limiter-onset'];

describe.each(['filtered', 'boosted'] as const)('1000 benches of %s units', (kind) => {
  test('hold the truth as often as they claim', () => {
    const lines: string[] = [];
    const missed: string[] = [];
    for (const [name, { benches, bounds, within }] of coverage(kind, 1000, 20260314)) {
      const share = within / benches;
      lines.push(
        `${name.padEnd(22)} ${(share * 100).toFixed(1)} % of ${benches}${bounds > 0 ? ` (${bounds} bounds)` : ''}`,
      );
      const continuous = !steps.includes(name) && bounds < benches / 2;
      if (continuous ? share < 0.93 || share > 0.97 : share < 0.95) missed.push(name);
    }
    console.log(lines.join('\n'));
    expect(missed).toEqual([]);
  });
});
