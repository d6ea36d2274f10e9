/** The file a `readback table` command is given: an entry by path or id, a DMN file, or a CSV file. */
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { type Answers, readAnswers } from '../../answers.ts';
import { CannotRun, type Entry, type Finding, nearest, TextFile } from '../../base/index.ts';
import { rowsFromCsv, type TableOfCsv } from '../../tables/csv.ts';
import { type DmnFile, readDmn } from '../../tables/dmn/index.ts';
import { type FileFault, UnusableFile } from '../../tables/file-fault.ts';
import type { EntryTable } from '../../tables/index.ts';
import type { ContentOption } from '../command.ts';
import { isThere } from '../commands/whole-file.ts';

export type TableFile =
  | {
      readonly kind: 'entry';
      readonly id: string;
      /** The content folder it lies in. */
      readonly content: string;
      readonly entry: Entry<'tables'>;
      readonly read: EntryTable;
      readonly answers: Answers;
    }
  | { readonly kind: 'dmn'; readonly id: string; readonly source: TextFile; readonly file: DmnFile }
  | { readonly kind: 'csv'; readonly id: string; readonly source: TextFile; readonly read: TableOfCsv };

/** A file of DMN or CSV that cannot be read at all: with its text, so that the place can be shown. */
export class UnreadableTable extends Error {
  readonly source: TextFile;
  readonly fault: FileFault;

  constructor(source: TextFile, fault: FileFault) {
    super(fault.message);
    this.source = source;
    this.fault = fault;
  }
}

/** Where a file that a command is given lies: an id names an entry of the content folder. */
export type NamedTable =
  | { readonly kind: 'entry'; readonly id: string; readonly content: string }
  | { readonly kind: 'dmn' | 'csv'; readonly path: string };

/** Larger files are not read at all. */
const mostBytes = 16 * 1024 ** 2;

/**
 * @param format what it is, whatever its name.
 * @throws CannotRun where there is no such file.
 */
export async function namedTable(
  name: string,
  { content }: ContentOption,
  format?: 'dmn' | 'csv',
): Promise<NamedTable> {
  if (format) return { kind: format, path: name };
  const ending = extname(name).toLowerCase();
  if (ending === '.dmn' || ending === '.xml') return { kind: 'dmn', path: name };
  if (ending === '.csv' || ending === '.tsv') return { kind: 'csv', path: name };
  if (ending === '.yaml') return entryAt(name);
  if (ending === '.yml') {
    throw new CannotRun(`${name}: entries end in .yaml.`, 'Rename the file.');
  }
  if (ending === '') return { kind: 'entry', id: name.replace(/^tables\//, ''), content };
  if (!(await isThere(name))) throw missing(name);
  throw new CannotRun(
    `${name} is no table: it ends in ${ending}.`,
    'Give an entry (tables/x.yaml), a .dmn file, a .csv file, or the id of an entry.',
  );
}

async function entryAt(path: string): Promise<NamedTable> {
  if (!(await isThere(path))) throw missing(path);
  const folder = dirname(resolve(path));
  if (basename(folder) !== 'tables' || !(await isThere(join(folder, '..', 'site.yaml')))) {
    throw new CannotRun(
      `${path} does not lie in the folder tables/ of a content folder.`,
      'An entry is read with what it links to: put it into tables/ beside site.yaml.',
    );
  }
  return { kind: 'entry', id: basename(path, '.yaml'), content: join(dirname(path), '..') };
}

/**
 * Reads what a command is given.
 * @throws CannotRun where there is no such file; UnreadableTable where it is none of its kind.
 */
export async function readTableFile(
  name: string,
  options: ContentOption,
  format?: 'dmn' | 'csv',
): Promise<TableFile> {
  const named = await namedTable(name, options, format);
  if (named.kind === 'entry') return readEntry(named);
  const { path, kind } = named;
  const source = new TextFile(path, await textOf(path));
  const id = basename(path, extname(path));
  try {
    return kind === 'dmn'
      ? { kind, id, source, file: readDmn(source.text) }
      : { kind, id, source, read: rowsFromCsv(source.text, id) };
  } catch (error) {
    if (!(error instanceof UnusableFile)) throw error;
    throw new UnreadableTable(source, error.fault);
  }
}

async function readEntry({ id, content }: NamedTable & { kind: 'entry' }): Promise<TableFile> {
  const { answers, findings } = await readAnswers(content);
  const entry = answers.base.tables.get(id);
  const read = answers.tables.get(id);
  if (entry && read) return { kind: 'entry', id, content, entry, read, answers };
  const [finding] = findings.filter(({ place }) => place.file === `tables/${id}.yaml`);
  if (finding) throw brokenEntry(content, finding);
  const guess = nearest(id, answers.base.tables.keys());
  throw new CannotRun(
    `There is no table “${id}” in ${content}.`,
    guess === undefined
      ? `It has: ${[...answers.base.tables.keys()].join(', ') || 'no tables'}.`
      : `Did you mean ${guess}?`,
  );
}

function brokenEntry(content: string, { place, message, help }: Finding): CannotRun {
  return new CannotRun(`${join(content, place.file)}:${place.line}:${place.column}: ${message}`, help);
}

async function textOf(path: string): Promise<string> {
  try {
    const { size } = await stat(path);
    if (size > mostBytes) {
      throw new CannotRun(
        `${path} is ${Math.ceil(size / 1024 ** 2)} MB; the most is ${mostBytes / 1024 ** 2} MB.`,
        'Export only the tables you need.',
      );
    }
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await readFile(path));
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    if (error instanceof TypeError) {
      throw new CannotRun(
        `${path} is not written in UTF-8.`,
        'Save it as UTF-8; spreadsheets call it “CSV UTF-8”.',
      );
    }
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'ENOENT') throw missing(path);
    if (code === 'EISDIR') throw new CannotRun(`${path} is a folder.`, 'Name the file in it.');
    throw new CannotRun(`${path} cannot be read (${code}).`, 'Check its permissions.');
  }
}

function missing(path: string): CannotRun {
  return new CannotRun(`There is no file ${path}.`, 'Check the name and the folder.');
}

/** A fault of a file as what stops a command, with its place. */
export function asCannotRun(source: TextFile, { span, message, help }: FileFault): CannotRun {
  const { file, line, column } = source.place(span.start, span.end);
  return new CannotRun(`${file}:${line}:${column}: ${message}`, help);
}

/** Runs what may meet a fault of a file; a fault stops the command. @throws CannotRun */
export async function orCannotRun<T>(source: TextFile | undefined, run: () => T | Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    if (error instanceof UnreadableTable) throw asCannotRun(error.source, error.fault);
    if (error instanceof UnusableFile && source) throw asCannotRun(source, error.fault);
    throw error;
  }
}
