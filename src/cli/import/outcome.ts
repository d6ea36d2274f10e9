/** What an import comes to: what it would write, what that changes, what the check would say. */
import { type Reading, readingColumns } from '../../../schemas/index.ts';
import type { ImportResult } from '../../../schemas/results/import.ts';
import { type Base, type Finding, FolderFiles, OverlaidFiles } from '../../base/index.ts';
import { checkContent, newSince, outputsAtOnce } from '../../check/index.ts';
import {
  cellName,
  columnLetters,
  type Difference,
  entryFiles,
  isSame,
  readingsDifference,
  roleText,
  type SheetImport,
} from '../../import/index.ts';
import { today } from '../command.ts';
import type { FileToWrite } from '../commands/whole-files.ts';
import { recallMemory } from '../kept-memory.ts';
import { commandLine } from './command-line.ts';
import type { ImportOptions } from './settings.ts';

export interface Outcome {
  readonly result: Omit<ImportResult, 'outcome'>;
  readonly isUnchanged: boolean;
  readonly toWrite: readonly FileToWrite[];
}

/** Looks at everything that has to be right before anything is written. Writes nothing. */
export async function outcomeOf(
  sheetFile: string,
  options: ImportOptions,
  base: Base,
  found: SheetImport,
): Promise<Outcome> {
  const { session, rows, questions } = found;
  const existing = session.existing ? base.readings.get(session.existing.id) : undefined;
  const difference =
    session.existing && rows
      ? readingsDifference(
          existing ? [...existing.profiles].flatMap((id) => existing.readingsOf(id)) : [],
          rows.readings,
        )
      : undefined;
  const open = questions.length + session.missing.length + (rows?.faultCount ?? 0);
  const isUnchanged =
    open === 0 &&
    difference !== undefined &&
    isSame(difference) &&
    session.changed.length === 0 &&
    found.newProfiles.length === 0;
  const files = isUnchanged || (rows?.readings.length ?? 0) === 0 ? undefined : entryFiles(base, found);
  const toWrite = files ? await withBefore(options.content, files) : [];
  const findings = files ? await findingsOf(options.content, files) : undefined;
  const guessed = found.columns.filter(({ certainty }) => certainty === 'guessed');
  const isConfirmed = options.asShown === true || guessed.length === 0;
  const isAllowed = options.despiteFindings === true || !findings?.some(standsAgainst);
  const isReplaced = options.replace === true || difference === undefined || isUnchanged;
  const ready =
    isUnchanged ||
    (open === 0 && files !== undefined && isConfirmed && isAllowed && isReplaced && !findings?.some(isShape));
  const result: Outcome['result'] = {
    ready,
    sheet: sheetFile,
    session: session.id ?? null,
    columns: found.columns.map(({ at, head, role, certainty, why }) => ({
      column: columnLetters(at),
      head,
      holds: roleText(role),
      certainty,
      why,
    })),
    decimals: found.decimals.sign ?? null,
    conditions: session.taken.map((taken) => ({ ...taken })),
    readings: countsOf(found),
    notes: [...found.notes],
    notUnderstood: (rows?.faults ?? []).map((fault) => ({ ...fault })),
    notUnderstoodCount: rows?.faultCount ?? 0,
    questions: questions.map((one) => ({ ...one })),
    missing: session.missing.map((one) => ({ ...one })),
    findings: findings?.map((finding) => asFound(finding, found)) ?? null,
    difference: difference
      ? { ...plain(difference), fields: session.changed.map((one) => ({ ...one })) }
      : null,
    files: toWrite.map(({ path, text, before }) => ({
      file: path,
      bytes: Buffer.byteLength(text),
      is: before === undefined ? 'new' : before === text ? 'unchanged' : 'changed',
    })),
    command: open === 0 && files ? commandLine(sheetFile, options, guessed, difference !== undefined) : null,
  };
  return { result, isUnchanged, toWrite: toWrite.filter(({ text, before }) => text !== before) };
}

/** Errors; a warning about a reading may be true of the unit. */
function standsAgainst({ severity }: Finding): boolean {
  return severity === 'error';
}

/** What is wrong with the shape of an entry stays wrong, whoever says otherwise. */
function isShape({ rule, severity }: Finding): boolean {
  return (
    severity === 'error' && ['schema', 'syntax', 'unknown-key', 'stray-file', 'dangling-link'].includes(rule)
  );
}

async function withBefore(folder: string, files: ReadonlyMap<string, string>): Promise<FileToWrite[]> {
  const there = new FolderFiles(folder);
  const names = new Set(there.list().files);
  return [...files].map(([path, text]) => ({
    path,
    text,
    before: names.has(path) ? there.read(path).source.text : undefined,
  }));
}

/** What the check finds with the files and not without. */
async function findingsOf(folder: string, files: ReadonlyMap<string, string>): Promise<readonly Finding[]> {
  const content = new FolderFiles(folder);
  const settings = { today: today(), memory: recallMemory(folder), outputsAtOnce };
  const after = await checkContent(new OverlaidFiles(content, files), settings);
  if (after.findings.length === 0) return [];
  return newSince(after, await checkContent(content, settings), []);
}

/** A finding, told by the cell of the sheet where it is about a reading of it. */
function asFound(
  { rule, severity, place, message, help }: Finding,
  { session, rows }: SheetImport,
): NonNullable<ImportResult['findings']>[number] {
  const isReading = place.file === `outputs/${session.id}/readings.csv`;
  const reading = isReading ? rows?.readings[place.line - 2] : undefined;
  const where = reading ? cellName(reading.at, reading.row) : `${place.file}:${place.line}`;
  return { rule, severity, place: where, message, help };
}

function countsOf({ rows }: SheetImport): ImportResult['readings'] {
  const counts = new Map<string, { profile: string; channel: string; count: number }>();
  for (const { profile, channel } of rows?.readings ?? []) {
    const key = `${profile} ${channel}`;
    const own = counts.get(key) ?? { profile, channel, count: 0 };
    own.count += 1;
    counts.set(key, own);
  }
  return [...counts.values()];
}

function plain({ added, removed, changed }: Difference) {
  return {
    added: added.map(readingAlone),
    removed: removed.map(readingAlone),
    changed: changed.map(({ before, now }) => ({ before: readingAlone(before), now: readingAlone(now) })),
  };
}

/** A reading without where it stands, its fields in the order of readings.csv. */
function readingAlone(reading: Reading): Reading {
  return Object.fromEntries(readingColumns.map((column) => [column, reading[column]])) as Reading;
}
