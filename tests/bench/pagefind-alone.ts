/** The floor of the search: Pagefind alone over the finished pages, as its own command runs it. */
import { execFile } from 'node:child_process';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { projectRoot } from '../../src/publish/project.ts';

/** Makes an index of a site, which is left in the folder for temporary files; gives the number of pages indexed. */
export async function pagefindAlone(site: string): Promise<number> {
  const output = await mkdtemp(join(tmpdir(), 'readback-pagefind-'));
  const command = join(projectRoot, 'node_modules/.bin/pagefind');
  const { stdout } = await promisify(execFile)(command, [
    ...['--site', site, '--output-path', output],
    ...['--force-language', 'en'],
  ]);
  return Number(/Indexed (\d+) pages/.exec(stdout)?.[1] ?? Number.NaN);
}
