/** From a saved entry to the page that shows it, while entries are written: `npm run bench -- dev [PROFILES]` */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { devSite } from '../../src/publish/dev.ts';
import { writeLargeBase } from './large-base.ts';

const edits = 5;
const pollMs = 20;

/** Runs the benchmark and prints its figures. */
export async function benchDev(profiles: number): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'readback-bench-dev-'));
  try {
    await writeLargeBase(folder, { families: 40, profiles, readingsPerProfile: 100, isWhole: true });
    const reports: number[] = [];
    const site = await devSite({
      contentFolder: folder,
      host: '127.0.0.1',
      port: 0,
      report: () => reports.push(performance.now()),
    });
    const page = `${site.address.replace('localhost', '127.0.0.1')}profiles/family-00/af0000/`;
    const file = join(folder, 'profiles/family-00/af0000.yaml');
    await (await fetch(page)).text();
    for (let edit = 1; edit <= edits; edit += 1) {
      await wait(3000);
      const text = await readFile(file, 'utf8');
      const before = process.cpuUsage();
      const saved = performance.now();
      const told = reports.length;
      await writeFile(file, text.replace(/about: .*/, `about: Edit number ${edit}.`));
      while (!(await (await fetch(page)).text()).includes(`Edit number ${edit}.`)) await wait(pollMs);
      const shown = performance.now() - saved;
      const { user, system } = process.cpuUsage(before);
      while (reports.length === told) await wait(pollMs);
      console.log(
        `dev: ${profiles} profiles, edit ${edit}: page after ${(shown / 1000).toFixed(2)} s (processor ${((user + system) / 1e6).toFixed(2)} s, polling included); findings after ${((performance.now() - saved) / 1000).toFixed(2)} s`,
      );
    }
    await site.close();
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
