/** `readback import SHEET`: a shop’s spreadsheet as a bench session. Shows what it would write; writes with `--write`. */
import { readFile, stat } from 'node:fs/promises';
import type { BlankSheetResult, ImportResult } from '../../../schemas/results/import.ts';
import { type Base, CannotRun, mostSheetBytes, nearest, readBase } from '../../base/index.ts';
import { blankSheetCsv, importSheet, readSheet, type Sheet, UnusableSheet } from '../../import/index.ts';
import { exitCodes, type Output, printJson } from '../command.ts';
import { outcomeOf } from '../import/outcome.ts';
import { previewText } from '../import/preview.ts';
import { type ImportOptions, settingsOf } from '../import/settings.ts';
import { writeNew } from './table-export.ts';
import { writeAllOrNone } from './whole-files.ts';

/** 0 shown without anything open, written, or there already; 1 something stands against it; 2 could not run. */
export async function importReadings(
  sheetFile: string | undefined,
  options: ImportOptions,
  output: Output,
): Promise<number> {
  if (options.blankSheet !== undefined) return await writeBlankSheet(options.blankSheet, options, output);
  if (sheetFile === undefined) {
    throw new CannotRun(
      'No sheet is named.',
      'Name a .csv or .xlsx file, or write an empty one with --blank-sheet FILE.csv.',
    );
  }
  const { base } = await readBase(options.content);
  const settings = settingsOf(options, base);
  const sheet = await sheetIn(sheetFile, options.sheet);
  const found = importSheet(sheet, settings);
  const { result, isUnchanged, toWrite } = await outcomeOf(sheetFile, options, base, found);
  const isWritten = options.write === true && result.ready && !isUnchanged;
  if (isWritten) await writeAllOrNone(options.content, toWrite);
  const outcome = isUnchanged ? 'unchanged' : isWritten ? 'written' : options.write ? 'refused' : 'preview';
  const whole: ImportResult = { outcome, ...result };
  if (options.json) printJson(output, whole);
  else output.out(previewText(whole));
  const isOpen = result.notUnderstoodCount + result.questions.length + result.missing.length > 0;
  return outcome === 'refused' || (outcome === 'preview' && isOpen) ? exitCodes.findings : exitCodes.ok;
}

async function sheetIn(file: string, name: string | undefined): Promise<Sheet> {
  let bytes: Uint8Array;
  try {
    const { size } = await stat(file);
    if (size > mostSheetBytes) {
      throw new CannotRun(
        `${file} has ${Math.ceil(size / 1024 ** 2)} MB; the most is ${mostSheetBytes / 1024 ** 2} MB.`,
        'Split it into several sessions.',
      );
    }
    bytes = await readFile(file);
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    throw new CannotRun(
      code === 'ENOENT' ? `There is no file ${file}.` : `${file} cannot be read (${code}).`,
      'Name a .csv or .xlsx file.',
    );
  }
  try {
    return readSheet(bytes, name);
  } catch (error) {
    if (!(error instanceof UnusableSheet)) throw error;
    throw new CannotRun(`${file}: ${error.message}`, error.help);
  }
}

async function writeBlankSheet(file: string, options: ImportOptions, output: Output): Promise<number> {
  const { base } = await readBase(options.content);
  const { text, rows } = blankSheetCsv((options.profile ?? []).map((id) => profileOf(base, id)));
  await writeNew(file, text);
  const result: BlankSheetResult = { file, rows };
  if (options.json) printJson(output, result);
  else {
    output.out(
      `Wrote ${file}: ${rows} rows to fill in.\n  readback import ${file} --like SESSION\n  → shows what becomes of it when it is filled in.`,
    );
  }
  return exitCodes.ok;
}

function profileOf(base: Base, id: string) {
  const profile = base.profiles.get(id)?.data;
  const family = profile && base.families.get(profile.family)?.data;
  if (!profile || !family) {
    const guess = nearest(id, base.profiles.keys());
    throw new CannotRun(
      `There is no profile “${id}”.`,
      guess ? `Did you mean --profile ${guess}?` : 'Give its path below profiles/ without the ending.',
    );
  }
  return {
    code: profile.code,
    unit: { name: family.name, channels: family.output.channels, ...family.volume },
  };
}
