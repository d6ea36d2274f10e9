/** Tables of twelve inputs and 500 rules are analysed in seconds of the processor’s time, and nothing is given up. */
import { expect, test } from 'vitest';
import { analyseTable, readTable } from '../../src/tables/index.ts';
import { denseFirst, nearlyComplete, nearlyCompleteFirst, randomLarge } from './large-tables.ts';

/** Last measured at 0.1 to 0.6 s: the rest is room for slow machines. */
const mostSeconds = 6;

test.each([
  ['nearly complete, unique', nearlyComplete],
  ['nearly complete, first', nearlyCompleteFirst],
  ['random, any', randomLarge],
  ['dense, first', denseFirst],
])('%s', (_, make) => {
  const { table } = readTable(make(500, 7));
  if (!table) throw new Error('the table cannot be read');
  const start = process.cpuUsage();
  const { cut } = analyseTable(table, { mostGaps: 20, mostOverlaps: 20 });
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1e6).toBeLessThan(mostSeconds);
  expect(cut).not.toContain('dead');
  expect(cut).not.toContain('idle');
});
