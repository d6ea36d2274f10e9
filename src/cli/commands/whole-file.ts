/** Files that are written whole or not at all. */
import { link, mkdir, readFile, rename, rm, rmdir, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { CannotRun } from '../../base/index.ts';

/**
 * Puts a file where none is.
 * @throws an error of code EEXIST where there is one.
 */
export async function place(path: string, text: string): Promise<void> {
  await viaOther(path, text, async (other) => {
    try {
      await link(other, path);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      // Memory sticks' file systems have no links; there a check and a rename have to do.
      if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'ENOSYS') throw error;
      if (await isThere(path)) throw Object.assign(new Error(), { code: 'EEXIST' });
      await rename(other, path);
    }
  });
}

/** Puts a longer text in a file's place: the old one stays until the new one is complete. */
export async function replace(path: string, text: string): Promise<void> {
  await viaOther(path, text, (other) => rename(other, path));
}

/**
 * Writes a file in place of what was there, whole or not at all; folders it lies in are made. `what` begins the
 * message: “The report”.
 * @throws CannotRun where it cannot be written.
 */
export async function writeWhole(file: string, text: string, what: string): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await replace(file, text);
  } catch (error) {
    throw new CannotRun(
      `${what} ${file} cannot be written (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
      'Give a file in a folder that can be written to.',
    );
  }
}

/** Writes beside the path, under a hidden name, then puts that in its place. */
async function viaOther(path: string, text: string, put: (other: string) => Promise<void>): Promise<void> {
  const other = join(path, '..', `.${basename(path)}.${process.pid}.part`);
  try {
    await writeFile(other, text, { flag: 'wx' });
    await put(other);
  } finally {
    await rm(other, { force: true });
  }
}

/** Takes folders away again, from the innermost to the outermost that was made. */
export async function removeEmpty(innermost: string, outermost: string): Promise<void> {
  for (let folder = resolve(innermost); ; folder = dirname(folder)) {
    await rmdir(folder);
    if (folder === resolve(outermost) || folder === dirname(folder)) return;
  }
}

/** Whether anything goes by this path. */
export async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/**
 * The text of a file; undefined where there is none.
 * @throws CannotRun where it cannot be read.
 */
export async function textIfThere(path: string): Promise<string | undefined> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return undefined;
    throw new CannotRun(`${path} cannot be read (${code ?? 'unknown error'}).`, 'Check its permissions.');
  }
}
