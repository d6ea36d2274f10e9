/** Folders that are filled whole or not at all. */
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { CannotRun } from '../../base/index.ts';
import { removeEmpty } from './whole-file.ts';

/**
 * Writes files, given by path, into a folder that is not there yet or is empty. They are written beside each other
 * under a hidden name first; where that fails, all of it is taken away again.
 * @throws CannotRun where the folder holds anything, or cannot be written.
 */
export async function fillFolder(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  const isThere = await isEmptyFolder(folder);
  const part = `.${basename(resolve(folder))}.${process.pid}.part`;
  const parent = dirname(resolve(folder));
  // An empty folder stays the one it is: a shell may stand in it.
  const scratch = isThere ? join(resolve(folder), part) : join(parent, part);
  let made: string | undefined;
  try {
    if (!isThere) made = await mkdir(parent, { recursive: true });
    await writeAll(scratch, files);
    if (isThere) await moveInto(scratch, folder);
    else await rename(scratch, folder);
  } catch (error) {
    await rm(scratch, { recursive: true, force: true });
    if (made !== undefined) await removeEmpty(parent, made);
    throw cannotFill(folder, error);
  }
}

/** @throws CannotRun where what is there is no folder, or not an empty one. */
async function isEmptyFolder(folder: string): Promise<boolean> {
  try {
    const [first] = (await readdir(folder)).sort();
    if (first === undefined) return true;
    throw new CannotRun(
      `${folder} is not empty: it holds ${first}. Nothing was written.`,
      'Name a folder that is not there yet, or an empty one. A repository can be made of it afterwards (git init).',
    );
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return false;
    if (code === 'ENOTDIR') {
      throw new CannotRun(`${folder} is a file, or lies in one.`, 'Name a folder that is not there yet.');
    }
    throw error instanceof CannotRun ? error : cannotFill(folder, error);
  }
}

async function writeAll(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  await mkdir(folder);
  for (const [path, text] of files) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text, { flag: 'wx' });
  }
}

/** Moves what a folder holds into its parent, which holds nothing else; back again where one move fails. */
async function moveInto(scratch: string, folder: string): Promise<void> {
  const names = await readdir(scratch);
  const others = (await readdir(folder)).filter((name) => name !== basename(scratch));
  if (others.length > 0) throw Object.assign(new Error(), { code: 'ENOTEMPTY' });
  const moved: string[] = [];
  try {
    for (const name of names) {
      await rename(join(scratch, name), join(folder, name));
      moved.push(name);
    }
    await rm(scratch, { recursive: true });
  } catch (error) {
    for (const name of moved) await rm(join(folder, name), { recursive: true, force: true });
    throw error;
  }
}

function cannotFill(folder: string, error: unknown): CannotRun {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
  return new CannotRun(
    `${folder} cannot be written (${code}). Nothing was left there.`,
    'Name a folder where you may write, with room for a megabyte.',
  );
}
