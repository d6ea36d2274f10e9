/** `readback table import FILE --out tables/x.yaml`: an entry from a DMN or CSV file. */
import { basename } from 'node:path';
import type { TableImportResult } from '../../../schemas/results/table-files.ts';
import { CannotRun } from '../../base/index.ts';
import { tableOfDecision, withEntryIds } from '../../tables/dmn/index.ts';
import { UnusableFile } from '../../tables/file-fault.ts';
import { counted } from '../../words/index.ts';
import { exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { type ImportedEntry, importedEntry } from '../tables/imported-entry.ts';
import { decisionNamed, noDecisionsHere, tableWithoutFaults } from '../tables/named-table.ts';
import { asCannotRun, orCannotRun, readTableFile, type TableFile } from '../tables/table-file.ts';
import { writeNew } from './table-export.ts';

export interface TableImportOptions extends JsonOption {
  readonly format?: 'dmn' | 'csv';
  readonly out?: string;
  readonly decision?: string;
}

/** 0 written, 2 could not run: then nothing is. */
export async function tableImport(
  name: string,
  options: TableImportOptions,
  output: Output,
): Promise<number> {
  const { out, format, decision } = options;
  if (out !== undefined && !/^[a-z0-9]+(-[a-z0-9]+)*\.yaml$/.test(basename(out))) {
    throw new CannotRun(
      `“${basename(out)}” cannot name an entry.`,
      'Use lower-case letters, digits and single hyphens, and the ending .yaml: tables/rear-speakers.yaml.',
    );
  }
  const file = await orCannotRun(undefined, () => readTableFile(name, { content: '.' }, format));
  if (file.kind === 'entry') {
    throw new CannotRun(`${name} is an entry already.`, 'Give a .dmn file or a .csv file, or say --format.');
  }
  const { table, text, fillIn, rules } = await orCannotRun(file.source, () => imported(file, decision));
  if (out !== undefined) await writeNew(out, text);
  const result: TableImportResult = {
    table,
    file: out ?? null,
    text: out === undefined ? text : null,
    rules,
    fillIn,
  };
  if (options.json) {
    printJson(output, result);
    return exitCodes.ok;
  }
  if (out === undefined) output.out(text.trimEnd());
  else output.out(`Wrote ${out}: ${counted(rules, 'rule')}.`);
  output.err(['To be filled in by hand:', ...fillIn.map((one) => `  - ${one}`)].join('\n'));
  return exitCodes.ok;
}

function imported(
  file: TableFile & { kind: 'dmn' | 'csv' },
  decisionName: string | undefined,
): ImportedEntry & { readonly table: string; readonly rules: number } {
  const from = basename(file.source.file);
  if (file.kind === 'csv') {
    noDecisionsHere(decisionName);
    const table = tableWithoutFaults(file);
    const { written, says, spanOf } = file.read;
    if (!written) throw new Error('a table without faults was written');
    const name = file.id.replaceAll('-', ' ');
    return {
      table: file.id,
      rules: table.rules.length,
      ...importedEntry({ written, name, question: undefined, says, from, spanOf }),
    };
  }
  const decision = decisionNamed(file, decisionName);
  const { written, faults, beyond, spanOf } = tableOfDecision(file.file, decision);
  const [fault] = faults;
  if (fault) throw asCannotRun(file.source, fault);
  if (!written) {
    throw new UnusableFile(
      beyond?.span ?? decision.span,
      `“${decision.name}” is no simple table, so it makes no entry: ${beyond?.message ?? ''}`,
      'readback table decide evaluates it as it is.',
    );
  }
  const rules = decision.logic.kind === 'table' ? decision.logic.rules : [];
  return {
    table: decision.name,
    rules: rules.length,
    ...importedEntry({
      written: withEntryIds(written),
      name: decision.label,
      question: decision.question,
      says: Object.fromEntries(rules.map(({ id, says }) => [id, says])),
      from,
      spanOf,
    }),
  };
}
