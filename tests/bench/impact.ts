/**
 * What comparing two states costs beyond reading them, by processor time: with nothing changed, after one reading was
 * edited, and after a table that decides plans was. `npm run bench -- impact [PROFILES]`
 */
import { type Answers, answersOf } from '../../src/answers.ts';
import { MemoryFiles, readBase } from '../../src/base/index.ts';
import { outputsAtOnce } from '../../src/check/index.ts';
import { changeOf, flipsOf } from '../../src/impact/index.ts';
import { filesOf } from '../check/example-base.ts';
import { largeBase } from './large-base.ts';

const readingsPerProfile = 100;

/** Runs the benchmark on the demo and on a large base with the demo’s plans, tables and classes of equipment. */
export async function benchImpact(profiles: number): Promise<void> {
  const demo = await filesOf('content');
  await report('demo', demo, 'outputs/2024-02-north/readings.csv');
  const shared = [...demo].filter(([file]) =>
    /^(plans|equipment)\/|^tables\/plan-|^sources\/equip/.test(file),
  );
  const large = new Map([...largeBase({ families: 40, profiles, readingsPerProfile }), ...shared]);
  await report('large', large, 'outputs/session-3/readings.csv');
}

async function report(name: string, files: ReadonlyMap<string, string>, sheet: string): Promise<void> {
  const read = async (file?: string, edit = (text: string) => text): Promise<Answers> => {
    const edited = new Map(files);
    if (file !== undefined) edited.set(file, edit(files.get(file) ?? ''));
    return answersOf((await readBase(new MemoryFiles(name, edited))).base, outputsAtOnce);
  };
  const reading = await timed(() => read());
  const before = reading.result;
  console.log(
    `impact: ${name}, ${before.base.profiles.size} profiles; reading one state ${seconds(reading.ms)}`,
  );
  const edits = {
    'nothing changed': await read(),
    'one reading': await read(sheet, (text) =>
      text.replace(/,FL,(\d+),1000,(\d+)\.(\d)/, ',FL,$1,1000,$2.9'),
    ),
    'the table of plans': await read('tables/plan-verdict.yaml', (text) =>
      text.replace('low-end-short: "> 0"', 'low-end-short: "> -1"'),
    ),
  };
  for (const [what, now] of Object.entries(edits)) {
    const { ms, result } = await timed(async () => changeOf(before, now).impact);
    const flips = result.profiles.flatMap(flipsOf).length;
    const { typical, combinations } = result.grid;
    console.log(
      `  ${what.padEnd(20)} ${seconds(ms)}   ${flips} flips, over ${typical} plans and ${combinations} combinations`,
    );
  }
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(2)} s`;
}

async function timed<T>(work: () => Promise<T>): Promise<{ ms: number; result: T }> {
  const start = process.cpuUsage();
  const result = await work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, result };
}
