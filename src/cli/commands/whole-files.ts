/** Several files of one folder that are written all or none. */
import { mkdir, readFile, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { CannotRun } from '../../base/index.ts';
import { place, removeEmpty, replace } from './whole-file.ts';

/** A file to write: over nothing where it is new, over the very text it had where it is not. */
export interface FileToWrite {
  readonly path: string;
  readonly text: string;
  /** The text it has now; undefined where there is no such file. */
  readonly before: string | undefined;
}

/**
 * Writes all files, each whole. Where one cannot be written, or has changed meanwhile, those before it are put back.
 * @throws CannotRun where any cannot be written: then everything is as it was.
 */
export async function writeAllOrNone(folder: string, files: readonly FileToWrite[]): Promise<void> {
  const undo: (() => Promise<unknown>)[] = [];
  let at = '';
  try {
    for (const { path, text, before } of files) {
      at = join(folder, path);
      const target = at;
      const made = await mkdir(dirname(target), { recursive: true });
      if (made !== undefined) undo.push(() => removeEmpty(dirname(target), made));
      if (before === undefined) {
        await place(target, text);
        undo.push(() => unlink(target));
      } else {
        if ((await readFile(target, 'utf8')) !== before) throw Object.assign(new Error(), { code: 'EEXIST' });
        await replace(target, text);
        undo.push(() => replace(target, before));
      }
    }
  } catch (error) {
    for (const step of undo.reverse()) await step().catch(() => undefined);
    const { code = 'unknown error' } = error as NodeJS.ErrnoException;
    throw code === 'EEXIST'
      ? new CannotRun(`${at} has changed meanwhile. Nothing was written.`, 'Try again.')
      : new CannotRun(
          `${at} cannot be written (${code}). Nothing was written.`,
          'Check the permissions of the folder and the space left.',
        );
  }
}
