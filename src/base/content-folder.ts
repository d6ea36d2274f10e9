/** The content folder on disk: the one place of the base that touches the file system. */
import { lstat, readdir, readFile } from 'node:fs/promises';
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
export const mostEntryBytes = 1024 ** 2;
export const mostSheetBytes = 64 * 1024 ** 2;

/**
 * Every file below `folder`, as paths with forward slashes, sorted. Hidden files and folders are left out;
 * links are not followed, and a finding names each.
 * @throws CannotRun where the folder cannot be listed.
 */
export async function listFiles(folder: string): Promise<{ files: string[]; findings: Finding[] }> {
  const files: string[] = [];
  const findings: Finding[] = [];
  const walk = async (below: string): Promise<void> => {
    const entries = await readdir(join(folder, below), { withFileTypes: true });
    for (const entry of entries) {
      if (entry.name.startsWith('.')) continue;
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isSymbolicLink()) findings.push(linkFinding(path));
      else if (entry.isDirectory()) await walk(path);
      else if (entry.isFile()) files.push(path);
    }
  };
  try {
    await walk('');
  } catch (error) {
    throw new CannotRun(
      `The content folder ${folder} cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
      'Give the folder that holds site.yaml with --content DIR.',
    );
  }
  return { files: files.sort(), findings };
}

/** Reads one file as UTF-8 text; a finding instead where it is too large or not text. */
export async function readText(
  folder: string,
  file: string,
): Promise<{ source: TextFile; findings: readonly Finding[] }> {
  const path = join(folder, file);
  const most = file.endsWith('.csv') ? mostSheetBytes : mostEntryBytes;
  const refuse = (message: string, help: string) => ({
    source: new TextFile(file, ''),
    findings: [syntaxFinding(file, message, help)],
  });
  try {
    const { size } = await lstat(path);
    if (size > most) {
      return refuse(
        `This file is ${Math.ceil(size / 1024 ** 2)} MB; the most is ${most / 1024 ** 2} MB.`,
        file.endsWith('.csv')
          ? 'Split it into several sessions.'
          : 'Shorten it, or split it into several entries.',
      );
    }
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await readFile(path));
    return { source: new TextFile(file, text), findings: [] };
  } catch (error) {
    if (error instanceof TypeError) {
      return refuse('This file is not UTF-8 text.', 'Save it again with the encoding UTF-8.');
    }
    return refuse(
      `This file cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown error'}).`,
      'Check its permissions.',
    );
  }
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

function linkFinding(file: string): Finding {
  return {
    rule: 'stray-file',
    severity: 'error',
    place: { file, line: 1, column: 1, endLine: 1, endColumn: 1 },
    message: 'This is a link to another place; links are not followed.',
    help: 'Put the file itself here.',
    related: [],
  };
}
