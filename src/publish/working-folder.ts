/** Where the process is while Astro builds. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { projectRoot } from './project.ts';

/**
 * Runs a build from a folder of its own within the program’s, and goes back. Astro keeps the modules it renders pages
 * with in the output folder where that lies in the working folder (or its path merely begins alike), and there they
 * do not find the program’s packages: a shop that builds in its content repository would get no site.
 */
export async function fromOwnFolder<Result>(run: () => Promise<Result>): Promise<Result> {
  const before = process.cwd();
  const parent = join(projectRoot, '.astro');
  await mkdir(parent, { recursive: true });
  const folder = await mkdtemp(join(parent, 'build-'));
  try {
    process.chdir(folder);
    return await run();
  } finally {
    process.chdir(before);
    await rm(folder, { recursive: true, force: true });
  }
}
