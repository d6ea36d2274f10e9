/** The content folder on disk: the one place of the base that touches the file system. */
import { isUtf8 } from 'node:buffer';
import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding } from './finding.ts';
import { TextFile } from './text-file.ts';

/** The run cannot go on at all: no such folder, no permission. The commands exit 2 with this message. */
export class CannotRun extends Error {
  readonly help: string;

  constructor(message: string, help: string) {
    super(message);
    this.help = help;
  }
}

/** Larger files are refused by size alone: an entry is a page of text, a sheet a day's readings. */
export const mostEntryBytes = 128 * 1024;
export const mostSheetBytes = 64 * 1024 ** 2;

/**
 * Where the files of a content folder come from: a disk, a revision, or memory. Read one after the other,
 * without waiting in between: thousands of small files are read fastest that way.
 */
export interface ContentFiles {
  /** What messages call the folder. */
  readonly folder: string;
  /**
   * Every file as a path with forward slashes, sorted; a finding for each that cannot be followed.
   * @throws CannotRun where there is no such folder.
   */
  list(): { files: string[]; findings: Finding[] };
  /** One file as UTF-8 text; a finding instead where it is too large or not text. */
  read(file: string): ReadFile;
}

export interface ReadFile {
  readonly source: TextFile;
  readonly findings: readonly Finding[];
}

/** A content folder on disk. Hidden files are left out; links are not followed, and a finding names each. */
export class FolderFiles implements ContentFiles {
  readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
  }

  list(): { files: string[]; findings: Finding[] } {
    const files: string[] = [];
    const findings: Finding[] = [];
    const walk = (below: string): void => {
      const entries = readdirSync(join(this.folder, below), { withFileTypes: true });
      for (const entry of entries) {
        if (entry.name.startsWith('.')) continue;
        const path = below === '' ? entry.name : `${below}/${entry.name}`;
        if (entry.isSymbolicLink()) findings.push(linkFinding(path));
        else if (entry.isDirectory()) walk(path);
        else if (entry.isFile()) files.push(path);
      }
    };
    try {
      walk('');
    } catch (error) {
      throw new CannotRun(
        `The content folder ${this.folder} cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
        'Give the folder that holds site.yaml with --content DIR.',
      );
    }
    return { files: files.sort(), findings };
  }

  read(file: string): ReadFile {
    const path = join(this.folder, file);
    try {
      const info = lstatSync(path);
      if (!info.isFile()) return refused(file, 'This is not a file.', 'Put the file itself here.');
      return tooLarge(file, info.size) ?? decoded(file, readFileSync(path));
    } catch (error) {
      return refused(
        file,
        `This file cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
        'Check its permissions.',
      );
    }
  }
}

/** So long after a change a file counts as settled, milliseconds: two changes in one tick of the clock look like one. */
const settledAfterMs = 100;

/** A content folder that is read again and again: only files whose size or times have changed are opened anew. */
export class RereadFiles extends FolderFiles {
  readonly #kept = new Map<string, { readonly state: string; readonly read: ReadFile }>();

  override read(file: string): ReadFile {
    const info = lstatSync(join(this.folder, file), { throwIfNoEntry: false });
    if (!info?.isFile()) return super.read(file);
    const state = `${info.size} ${info.mtimeMs} ${info.ctimeMs} ${info.ino}`;
    const kept = this.#kept.get(file);
    if (kept?.state === state) return kept.read;
    const read = super.read(file);
    if (Date.now() - info.ctimeMs > settledAfterMs) this.#kept.set(file, { state, read });
    else this.#kept.delete(file);
    return read;
  }
}

function tooLarge(file: string, bytes: number): ReadFile | undefined {
  const isSheet = file.endsWith('.csv');
  const most = isSheet ? mostSheetBytes : mostEntryBytes;
  if (bytes <= most) return undefined;
  const [unit, size] = isSheet ? (['MB', 1024 ** 2] as const) : (['kB', 1024] as const);
  return refused(
    file,
    `This file is ${Math.ceil(bytes / size)} ${unit}; the most is ${most / size} ${unit}.`,
    isSheet ? 'Split it into several sessions.' : 'Shorten it, or split it into several entries.',
  );
}

/** The bytes of a file as text, within the bounds of size and encoding that hold for every file. */
export function decoded(file: string, bytes: Uint8Array): ReadFile {
  const large = tooLarge(file, bytes.length);
  if (large) return large;
  return isUtf8(bytes)
    ? { source: new TextFile(file, bytes), findings: [] }
    : refused(file, 'This file is not UTF-8 text.', 'Save it again with the encoding UTF-8.');
}

function refused(file: string, message: string, help: string): ReadFile {
  return { source: new TextFile(file, ''), findings: [syntaxFinding(file, message, help)] };
}

function syntaxFinding(file: string, message: string, help: string): Finding {
  return {
    rule: 'syntax',
    severity: 'error',
    place: { file, line: 1, column: 1, endLine: 1, endColumn: 1 },
    message,
    help,
    related: [],
  };
}

/** The finding for a link in a content folder. */
export function linkFinding(file: string): Finding {
  return {
    rule: 'stray-file',
    severity: 'error',
    place: { file, line: 1, column: 1, endLine: 1, endColumn: 1 },
    message: 'This is a link to another place; links are not followed.',
    help: 'Put the file itself here.',
    related: [],
  };
}
