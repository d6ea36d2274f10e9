/** What a check found out, kept in a file between runs, so that the next one looks only at what has changed. */
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { digestOf, MapMemory } from '../base/index.ts';

/** Where memories are kept unless told otherwise: the user's cache folder (XDG Base Directory Specification). */
function cacheFolder(): string {
  const { XDG_CACHE_HOME: own } = process.env;
  return join(own || join(homedir(), '.cache'), 'readback');
}

/** The file that keeps the memory of a content folder. */
function memoryFile(content: string): string {
  return join(cacheFolder(), `check-${digestOf(resolve(content))}.json`);
}

interface KeptMemory {
  /** A digest of the program that found it out: another version may find out something else. */
  readonly program: string;
  readonly known: readonly (readonly [string, unknown])[];
}

/** The memory of a content folder as an earlier run of this very program left it; empty where there is none. */
export function recallMemory(content: string): MapMemory {
  try {
    const kept = JSON.parse(readFileSync(memoryFile(content), 'utf8')) as KeptMemory;
    if (kept.program === programDigest()) return new MapMemory(kept.known);
  } catch {
    // Nothing kept, or nothing that can be read: everything is found out anew.
  }
  return new MapMemory();
}

/** Keeps a memory for the next run. A folder that cannot be written to only costs the next run its time. */
export function keepMemory(content: string, memory: MapMemory): void {
  if (!memory.hasChanged) return;
  const file = memoryFile(content);
  const kept: KeptMemory = { program: programDigest(), known: [...memory.used] };
  try {
    mkdirSync(dirname(file), { recursive: true });
    // Written beside and then put in place: a run that is stopped leaves the last memory whole.
    const unfinished = `${file}.${process.pid}`;
    writeFileSync(unfinished, JSON.stringify(kept));
    renameSync(unfinished, file);
  } catch {
    // See above.
  }
}

let program: string | undefined;

/** A digest of every source file and of the versions of the libraries. */
function programDigest(): string {
  if (program !== undefined) return program;
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const texts = [process.version, readFileSync(join(root, 'package-lock.json'), 'utf8')];
  for (const folder of ['schemas', 'src']) {
    for (const entry of readdirSync(join(root, folder), { recursive: true, withFileTypes: true })) {
      if (entry.isFile() && entry.name.endsWith('.ts'))
        texts.push(readFileSync(join(entry.parentPath, entry.name), 'utf8'));
    }
  }
  program = digestOf('program', ...texts);
  return program;
}
