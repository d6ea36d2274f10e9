/** Analysis against brute force, on 10,000 random tables: see tests/tables/agrees.ts. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { expectAgreement, type Tally } from '../tables/agrees.ts';
import { randomTable } from '../tables/random-tables.ts';

test('analysis says what evaluation says at every point of 10,000 tables', () => {
  const tally: Tally = new Map();
  const holds = fc.property(randomTable, (written) => expectAgreement(written, tally));
  fc.assert(holds, { seed: 20260315, numRuns: 10_000 });
  expect([...tally.values()].every((count) => count > 1000)).toBe(true);
});
