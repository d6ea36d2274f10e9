/** `readback table export FILE --format dmn|csv`: a table for other programs. */
import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { TableExportResult } from '../../../schemas/results/table-files.ts';
import { CannotRun } from '../../base/index.ts';
import { rowsToCsv } from '../../tables/csv.ts';
import {
  type DmnDecision,
  type DmnExport,
  exportDmn,
  idFor,
  idOfFeelName,
  tableOfDecision,
  withEntryIds,
} from '../../tables/dmn/index.ts';
import { CannotExport } from '../../tables/file-fault.ts';
import { readTable } from '../../tables/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { decisionNamed, noDecisionsHere, tableWithoutFaults } from '../tables/named-table.ts';
import { asCannotRun, orCannotRun, readTableFile, type TableFile } from '../tables/table-file.ts';
import { place } from './whole-file.ts';

export interface TableExportOptions extends ContentOption, JsonOption {
  readonly format: 'dmn' | 'csv';
  readonly out?: string;
  readonly decision?: string;
}

/** 0 written, 2 could not run. */
export async function tableExport(
  name: string,
  options: TableExportOptions,
  output: Output,
): Promise<number> {
  const file = await orCannotRun(undefined, () => readTableFile(name, options));
  const source = file.kind === 'entry' ? undefined : file.source;
  const table = await orCannotRun(source, () => exported(file, options.decision));
  const text = await textOf(table, options.format);
  if (options.out !== undefined) await writeNew(options.out, text);
  const result: TableExportResult = {
    format: options.format,
    tables: [table.id],
    file: options.out ?? null,
    text: options.out === undefined ? text : null,
    notes: notesOn(file, options.format),
  };
  if (options.json) {
    printJson(output, result);
    return exitCodes.ok;
  }
  for (const note of result.notes) output.err(note);
  if (options.out === undefined) output.out(text.trimEnd());
  else output.out(`Wrote ${options.out}.`);
  return exitCodes.ok;
}

async function textOf(table: DmnExport, format: 'dmn' | 'csv'): Promise<string> {
  try {
    return format === 'dmn' ? await exportDmn([table], table.name) : rowsToCsv(table.table, table.says);
  } catch (error) {
    if (error instanceof CannotExport) throw new CannotRun(error.message, error.help);
    throw error;
  }
}

function exported(file: TableFile, decision: string | undefined): DmnExport {
  if (file.kind === 'dmn') return exportedDecision(file, decisionNamed(file, decision));
  noDecisionsHere(decision);
  const table = tableWithoutFaults(file);
  if (file.kind === 'csv') return { id: idFor(file.id), name: file.id, table, says: file.read.says };
  const { name, question, rules } = file.entry.data;
  return {
    id: file.id.replaceAll('/', '-'),
    name,
    question,
    table,
    says: Object.fromEntries(rules.map(({ id, say }) => [id, say])),
  };
}

function exportedDecision(file: TableFile & { kind: 'dmn' }, decision: DmnDecision): DmnExport {
  const { written, faults, beyond } = tableOfDecision(file.file, decision);
  const [fault] = faults;
  if (fault) throw asCannotRun(file.source, fault);
  if (beyond || !written) {
    throw asCannotRun(file.source, {
      span: beyond?.span ?? decision.span,
      message: `“${decision.name}” is no simple table: ${beyond?.message ?? ''}`,
      help: 'Only tables of plain inputs and plain answers can be exported.',
    });
  }
  const { table } = readTable(withEntryIds(written));
  if (!table) throw new Error('other names make no faults');
  const rules = decision.logic.kind === 'table' ? decision.logic.rules : [];
  return {
    id: /^_?[a-z0-9]+( [a-z0-9]+)*$/.test(decision.name) ? idOfFeelName(decision.name) : idFor(decision.name),
    name: decision.label,
    question: decision.question,
    table,
    says: Object.fromEntries(rules.map(({ id, says }) => [id, says])),
  };
}

/** What the format has no place for. */
function notesOn(file: TableFile, format: 'dmn' | 'csv'): string[] {
  const notes: string[] = [];
  if (format === 'csv') {
    notes.push('CSV has no place for labels: columns go by their ids.');
  }
  if (file.kind === 'entry') {
    const { inputs, rules } = file.entry.data;
    if (inputs.some(({ holds }) => holds === 'characteristic' || holds === 'trait')) {
      notes.push(
        'Which values are computed from readings is left out: elsewhere they are inputs like any other.',
      );
    }
    if (rules.some((rule) => rule.guides.length + rule.profiles.length > 0)) {
      notes.push('Links to guides and profiles are left out.');
    }
    notes.push('Sources are left out.');
  }
  return notes;
}

/** @throws CannotRun where the file is there already or cannot be written. */
export async function writeNew(path: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await place(path, text);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    throw code === 'EEXIST'
      ? new CannotRun(
          `${path} is there already, and is left as it is.`,
          'Give another name, or move it away first.',
        )
      : new CannotRun(
          `${path} cannot be written (${code}).`,
          'Give a file in a folder that can be written to.',
        );
  }
}
