/** Tells when anything in a folder has changed, by looking again and again. */
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** The least time between two looks, milliseconds. */
const pauseMs = 250;

/** A look at a large folder takes its time: it is given no more than this share of it. */
const mostShare = 0.1;

/** Names, sizes and times of all files of a folder as one text; hidden ones, which are no entries, left out. */
export async function stateOfFolder(folder: string): Promise<string> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile() && !entry.name.startsWith('.'));
  const lines = await Promise.all(
    files.map(async ({ parentPath, name }) => {
      const path = join(parentPath, name);
      // A file may go away between the two calls; it is then missing at the next look too.
      const found = await stat(path).catch(() => undefined);
      return found ? `${path} ${found.size} ${found.mtimeMs}` : '';
    }),
  );
  return lines.sort().join('\n');
}

/**
 * Calls `changed` when the folder is no longer in `state`, and again at each later change, one call at a time.
 * Looking works on every system and network drive alike, and misses nothing between `state` and the first look.
 * A folder of editors' half-written files is left to settle: a change is told when two looks agree.
 */
export async function watchFolder(
  folder: string,
  state: string,
  changed: () => Promise<void>,
  signal: AbortSignal,
): Promise<void> {
  let known = state;
  let last = state;
  while (!signal.aborted) {
    const begin = performance.now();
    const now = await stateOfFolder(folder).catch(() => last);
    const tookMs = performance.now() - begin;
    if (now !== known && now === last) {
      known = now;
      await changed();
    }
    last = now;
    await wait(Math.max(pauseMs, tookMs / mostShare), undefined, { signal }).catch(() => undefined);
  }
}
