/**
 * What analysing decision tables costs: seeded tables of twelve inputs, by processor time and as a ratio to reading the
 * same tables’ tests with the FEEL library alone. `npm run bench -- tables [RULES]`
 */
import { parseUnaryTests } from 'feelin';
import { analyseTable, readTable, type WrittenTable } from '../../src/tables/index.ts';
import { denseFirst, nearlyComplete, nearlyCompleteFirst, randomLarge } from '../tables/large-tables.ts';

const seeds = [1, 2, 3];
const kinds: Readonly<Record<string, (rules: number, seed: number) => WrittenTable>> = {
  'nearly complete, unique': nearlyComplete,
  'nearly complete, first': nearlyCompleteFirst,
  'random, any': randomLarge,
  'dense, first': denseFirst,
};

/** Runs the benchmark up to so many rules and prints its figures. */
export function benchTables(most: number): void {
  const sizes = [most / 10, (most * 2) / 5, most].map(Math.round);
  for (const [name, make] of Object.entries(kinds)) {
    let before: number | undefined;
    for (const size of sizes) {
      const tables = seeds.map((seed) => make(size, seed));
      const parseMs = timed(() => tables.forEach(parseAlone));
      const read = tables.map((one) => readTable(one).table);
      const found = new Map<string, number>();
      const cut = new Set<string>();
      const times = read.map((table) =>
        timed(() => {
          if (!table) throw new Error('the table cannot be read');
          const analysis = analyseTable(table);
          for (const kind of ['gaps', 'dead', 'subsumed', 'mergeable', 'idle'] as const) {
            found.set(kind, (found.get(kind) ?? 0) + analysis[kind].length);
          }
          found.set('overlaps', (found.get('overlaps') ?? 0) + analysis.overlapCount);
          for (const part of analysis.cut) cut.add(part);
        }),
      );
      const meanMs = times.reduce((sum, one) => sum + one, 0) / times.length;
      const ratio = (meanMs * tables.length) / parseMs;
      const growth = before === undefined ? '' : `, ${(meanMs / before).toFixed(1)} times the size before`;
      const findings = [...found].map(([kind, count]) => `${kind} ${count}`).join(', ');
      console.log(
        `tables: ${name}, ${size} rules: ${(meanMs / 1000).toFixed(3)} s, at most ${(Math.max(...times) / 1000).toFixed(3)} s, ${ratio.toFixed(1)} times reading the tests${growth}; ${findings}; cut short: ${[...cut].join(', ') || 'nothing'}`,
      );
      before = meanMs;
    }
  }
}

function parseAlone({ rules }: WrittenTable): void {
  for (const { tests } of rules) for (const test of tests) parseUnaryTests(test, {}, undefined);
}

/** Processor time in milliseconds. */
function timed(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}
