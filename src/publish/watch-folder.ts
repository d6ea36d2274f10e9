/** Tells when anything in a folder has changed: at once where the system tells, else by looking again and again. */
import { watch } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** The least time between two looks, milliseconds. */
const pauseMs = 250;

/** A look at a large folder takes its time: it is given no more than this share of it. */
const mostShare = 0.1;

/** After so long without another change a file counts as written. */
const settledMs = 60;

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
 * Looking works on every system and network drive alike, and misses nothing between `state` and the first look; where
 * the system tells of changes besides, they are not waited for. A folder of editors' half-written files is left to
 * settle: a change is told when two looks agree, or when the system has told of none for a moment.
 */
export async function watchFolder(
  folder: string,
  state: string,
  changed: () => Promise<void>,
  signal: AbortSignal,
): Promise<void> {
  const told = toldChanges(folder, signal);
  await told.listen();
  let known = state;
  let last = state;
  while (!signal.aborted) {
    if (told.isSettled()) {
      told.forget();
      const [now] = await Promise.all([stateOfFolder(folder).catch(() => last), changed(), told.listen()]);
      known = now;
      last = now;
      continue;
    }
    const begin = performance.now();
    const now = await stateOfFolder(folder).catch(() => last);
    const tookMs = performance.now() - begin;
    if (now !== known && now === last) {
      known = now;
      told.forget();
      await Promise.all([changed(), told.listen()]);
    }
    last = now;
    await told.orWait(Math.max(pauseMs, tookMs / mostShare));
  }
}

/** What the system tells of changes in a folder; nothing where it cannot. */
function toldChanges(folder: string, signal: AbortSignal) {
  let latest: number | undefined;
  let wake = (): void => undefined;
  const heard = (name: string | null): void => {
    if (name?.startsWith('.')) return;
    latest = performance.now();
    wake();
  };
  const watched = new Set<string>();
  /** Folder by folder: watched as a whole, each of its files would be watched for itself. */
  const watchAll = async (): Promise<void> => {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const below = entries
      .filter((one) => one.isDirectory())
      .map(({ parentPath, name }) => join(parentPath, name));
    for (const path of [folder, ...below]) {
      if (watched.has(path)) continue;
      watched.add(path);
      const watcher = watch(path, { signal }, (_, name) => heard(name));
      watcher.on('error', () => {
        watched.delete(path);
        watcher.close();
      });
    }
  };
  const settledIn = (): number =>
    latest === undefined ? Number.POSITIVE_INFINITY : latest + settledMs - performance.now();
  return {
    /** Begins, and takes in what folders there are by now. Not every system and drive tells: then looking has to do. */
    listen: (): Promise<void> => watchAll().catch(() => undefined),
    isSettled: (): boolean => settledIn() <= 0,
    forget: (): void => {
      latest = undefined;
    },
    /** Waits so long, or until what was told has settled. */
    orWait: async (ms: number): Promise<void> => {
      const until = performance.now() + ms;
      while (!signal.aborted && settledIn() > 0 && performance.now() < until) {
        const woken = new Promise<void>((resolve) => {
          wake = resolve;
        });
        const pause = Math.max(1, Math.min(until - performance.now(), settledIn()));
        const stop = new AbortController();
        const stopped = AbortSignal.any([signal, stop.signal]);
        await Promise.race([woken, wait(pause, undefined, { signal: stopped }).catch(() => undefined)]);
        stop.abort();
      }
    },
  };
}
