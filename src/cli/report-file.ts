/** Reports in every form the check knows, for the terminal and for files. */
import { extname, relative, resolve, sep } from 'node:path';
import { CannotRun } from '../base/index.ts';
import {
  githubReport,
  htmlReport,
  jsonReport,
  type Report,
  rules,
  sarifReport,
  textReport,
} from '../check/index.ts';
import { writeWhole } from './commands/whole-file.ts';

export const reportFormats = ['text', 'json', 'sarif', 'github', 'html'] as const;
export type ReportFormat = (typeof reportFormats)[number];

export function reportText(report: Report, format: ReportFormat, colour: boolean): string {
  switch (format) {
    case 'text':
      return textReport(report, colour);
    case 'json':
      return JSON.stringify(jsonReport(report), undefined, 2);
    case 'sarif':
      return JSON.stringify(sarifReport(report, rules), undefined, 2);
    case 'github':
      return githubReport(report);
    case 'html':
      return htmlReport(report, rules);
  }
}

const formatOfEnding: Readonly<Record<string, ReportFormat>> = {
  '.txt': 'text',
  '.json': 'json',
  '.sarif': 'sarif',
  '.html': 'html',
};

/** The form a report of the check is written in, by the ending of its name; see {@link formatByEnding}. */
export function formatOfFile(file: string): ReportFormat {
  return formatByEnding(file, formatOfEnding);
}

/**
 * The form a report file is written in, by the ending of its name.
 * @throws CannotRun where the ending is none of those known.
 */
export function formatByEnding<T extends string>(file: string, known: Readonly<Record<string, T>>): T {
  const format = known[extname(file).toLowerCase()];
  if (format) return format;
  throw new CannotRun(
    `${file}: the ending of the file says how the report is written, and this one is not known.`,
    `Give one of: ${Object.keys(known).join(', ')}.`,
  );
}

/** A folder as seen from where the command runs: reports for other programs name files so. */
export function fromHere(folder: string): string {
  return relative('', resolve(folder)).split(sep).join('/');
}

/**
 * Writes a report in the form its name asks for, whole or not at all; folders it lies in are made.
 * @throws CannotRun where it cannot be written.
 */
export async function writeReport(report: Report, file: string): Promise<void> {
  const text = reportText(report, formatOfFile(file), false);
  await writeWhole(file, `${text.trimEnd()}\n`, 'The report');
}
