/** The folder a site is published into: never half written, never someone else's. */
import { lstat, mkdir, mkdtemp, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { CannotRun } from '../base/index.ts';

/** Every site made here has these, and hardly anything else has both. */
const marks = ['codes.json', 'pagefind'];

/**
 * Refuses a folder that holds something other than an earlier site, as all of it is about to be replaced.
 * @throws CannotRun
 */
export async function assertReplaceable(outDir: string): Promise<void> {
  const isLink = await lstat(outDir).then(
    (found) => found.isSymbolicLink(),
    () => false,
  );
  if (isLink) {
    throw new CannotRun(
      `The output folder ${outDir} is a link to another place.`,
      'Name the folder itself: a build puts a new folder in place of the old one, and the link would be lost.',
    );
  }
  let names: string[];
  try {
    names = await readdir(outDir);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw new CannotRun(
      `The output folder ${outDir} cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
      'Name another folder for the site.',
    );
  }
  if (names.length === 0 || marks.every((mark) => names.includes(mark))) return;
  throw new CannotRun(
    `The output folder ${outDir} holds files that are not an earlier site.`,
    'Name an empty folder, or one that does not exist yet: a build replaces everything in it.',
  );
}

/**
 * Makes a site in a temporary folder beside `outDir` and then puts it in its place. Where `make` fails, the
 * last good site stays and the temporary folder is removed.
 */
export async function replaceFolder<Result>(
  outDir: string,
  make: (fresh: string, scratch: string) => Promise<Result>,
): Promise<Result> {
  const target = resolve(outDir);
  await assertReplaceable(target);
  await mkdir(dirname(target), { recursive: true });
  // Beside it, so that the last move is a rename within one file system.
  const work = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
  const fresh = join(work, 'site');
  try {
    const result = await make(fresh, join(work, 'scratch'));
    const old = join(work, 'old');
    const hadOne = await exists(target);
    if (hadOne) await rename(target, old);
    try {
      await rename(fresh, target);
    } catch (error) {
      if (hadOne) await rename(old, target);
      throw error;
    }
    return result;
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
