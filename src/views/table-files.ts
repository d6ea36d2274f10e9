/** A decision table as files for other programs: DMN and CSV. */
import type { Answers } from '../answers.ts';
import { rowsToCsv } from '../tables/csv.ts';
import { exportDmn } from '../tables/dmn/index.ts';
import { CannotExport } from '../tables/file-fault.ts';
import { tableFilePath } from './paths.ts';

export interface TableFilesView {
  /** One for each form the table can be written in. */
  readonly files: readonly TableFileView[];
}

export interface TableFileView {
  readonly form: TableForm;
  readonly label: string;
  readonly path: string;
  readonly text: string;
}

export type TableForm = 'dmn' | 'csv';

/** The files of each table without faults, by its id. */
export async function tableFiles(answers: Answers): Promise<[id: string, view: TableFilesView][]> {
  const all: [string, TableFilesView][] = [];
  for (const [id, { table }] of answers.tables) {
    const data = answers.base.tables.get(id)?.data;
    if (!table || !data) continue;
    const says = Object.fromEntries(data.rules.map(({ id: rule, say }) => [rule, say]));
    const { name, question } = data;
    const written: readonly [TableForm, string, string | undefined][] = [
      [
        'dmn',
        'OMG DMN, for decision engines and editors',
        await whereItCan(() =>
          exportDmn([{ id: id.replaceAll('/', '-'), name, question, table, says }], name),
        ),
      ],
      ['csv', 'CSV, for spreadsheets', await whereItCan(() => rowsToCsv(table, says))],
    ];
    const files = written.flatMap(([form, label, text]) =>
      text === undefined ? [] : [{ form, label, path: tableFilePath(id, form), text }],
    );
    all.push([id, { files }]);
  }
  return all;
}

/** Not every table can be written in every form. */
async function whereItCan(write: () => string | Promise<string>): Promise<string | undefined> {
  try {
    return await write();
  } catch (error) {
    if (error instanceof CannotExport) return undefined;
    throw error;
  }
}
