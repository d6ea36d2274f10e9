/**
 * Analysis against brute force: 300 random tables of every kind of column, test and policy, each finding held against
 * what the FEEL library says at every point. The long run has more: tests/long/tables.test.ts.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { expectAgreement, type Tally } from './agrees.ts';
import { randomTable } from './random-tables.ts';

test('analysis says what evaluation says at every point', () => {
  const tally: Tally = new Map();
  const holds = fc.property(randomTable, (written) => expectAgreement(written, tally));
  fc.assert(holds, { seed: 20260314, numRuns: 300 });
  expect([...tally.values()].every((count) => count > 5)).toBe(true);
}, 120_000);
