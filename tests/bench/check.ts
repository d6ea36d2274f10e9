/**
 * What a check costs: cold, as a ratio to reading the same files and parsing them with the same libraries and
 * nothing else; and again after one edit, as a ratio to cold. `npm run bench -- check [PROFILES]`
 */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Finding, MapMemory, type Memory } from '../../src/base/index.ts';
import { checkContent, outputsAtOnce } from '../../src/check/index.ts';
import { writeLargeBase } from './large-base.ts';
import { parseOnly } from './parse-only.ts';

const readingsPerProfile = 100;

/** Runs the benchmark and prints its figures. */
export async function benchCheck(profiles: number): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'readback-bench-'));
  try {
    await writeLargeBase(folder, { families: 40, profiles, readingsPerProfile });
    const floor = await timed(() => parseOnly(folder));
    const memory = new MapMemory();
    const cold = await timed(() => findingsOf(folder, memory));
    const kept = JSON.stringify([...memory.used]);
    await editOneReading(folder);
    const warm = await timed(() =>
      findingsOf(folder, new MapMemory(JSON.parse(kept) as [string, unknown][])),
    );
    const findings = cold.result;
    console.log(`check: ${profiles} profiles, ${floor.result} readings, ${findings.length} findings`);
    report('reading and parsing alone', floor.ms, floor.ms);
    report('a whole check', cold.ms, floor.ms);
    console.log(
      `  again after one edit, against cold  ${(warm.ms / 1000).toFixed(2)} s   ${(warm.ms / cold.ms).toFixed(3)}; ${warm.result.length} findings; ${(kept.length / 1024 ** 2).toFixed(1)} MB kept`,
    );
    console.log(`  most heap in use ${(process.memoryUsage().heapUsed / 1024 ** 2).toFixed(0)} MB`);
    for (const one of findings.slice(0, 3)) console.log(`  ${one.rule} ${one.place.file}: ${one.message}`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Nothing else of a run is kept for the next: each is a process of its own. */
async function findingsOf(folder: string, memory: Memory): Promise<readonly Finding[]> {
  const { findings } = await checkContent(folder, { memory, outputsAtOnce });
  return findings;
}

/** Changes one reading in the middle of the base by a little. */
async function editOneReading(folder: string): Promise<void> {
  const file = join(folder, 'outputs/session-3/readings.csv');
  const text = await readFile(file, 'utf8');
  await writeFile(
    file,
    text.replace(
      /,FL,20,1000,(\d+\.\d)(\d)/,
      (_, head, digit) => `,FL,20,1000,${head}${(Number(digit) + 1) % 10}`,
    ),
  );
}

function report(what: string, ms: number, against: number): void {
  console.log(`  ${what.padEnd(34)} ${(ms / 1000).toFixed(2)} s   ${(ms / against).toFixed(2)}`);
}

/** Time of the processor, not of the wall: what else runs on the machine does not count. */
async function timed<T>(work: () => Promise<T>): Promise<{ ms: number; result: T }> {
  const start = process.cpuUsage();
  const result = await work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, result };
}
