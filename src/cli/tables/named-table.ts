/** The one table or decision of a file that is meant, without faults. */
import { CannotRun, nearest } from '../../base/index.ts';
import { type DmnDecision, likeName } from '../../tables/dmn/index.ts';
import type { Table } from '../../tables/index.ts';
import { asCannotRun, type TableFile } from './table-file.ts';

/**
 * The decision of a DMN file that `--decision` names: by name, label or id. Without it, the only one there is.
 * @throws CannotRun where there is none, or more than one and none is named.
 */
export function decisionNamed(
  { source, file }: TableFile & { kind: 'dmn' },
  name: string | undefined,
): DmnDecision {
  const { decisions, refused } = file;
  const all = decisions.map((one) => `“${one.name}”`).join(', ');
  if (name === undefined) {
    const [only, ...more] = decisions;
    if (only && more.length === 0) return only;
    if (!only) {
      const [first] = refused;
      if (first) throw asCannotRun(source, first);
      throw new CannotRun(`${source.file} holds no decision.`, 'Export the decision with its table.');
    }
    throw new CannotRun(
      `${source.file} holds ${decisions.length} decisions, and it is not said which one is meant.`,
      `Add --decision with one of: ${all}.`,
    );
  }
  const wanted = likeName(name);
  const found = decisions.find((one) =>
    [one.name, one.label, one.id].some((each) => likeName(each) === wanted),
  );
  if (found) return found;
  const kept = refused.find((one) => [one.name, one.id].some((each) => likeName(each) === wanted));
  if (kept) throw asCannotRun(source, kept);
  const guess = nearest(
    name,
    decisions.map((one) => one.name),
  );
  throw new CannotRun(
    `There is no decision “${name}” in ${source.file}.`,
    `${guess === undefined ? '' : `Did you mean “${guess}”? `}${all === '' ? 'It holds none.' : `It holds: ${all}.`}`,
  );
}

/** @throws CannotRun where `--decision` is given for what is no DMN file. */
export function noDecisionsHere(decision: string | undefined): void {
  if (decision === undefined) return;
  throw new CannotRun(
    '--decision names a decision of a DMN file, but this file holds one table.',
    'Leave --decision out.',
  );
}

/** @throws CannotRun where the table has faults: the first of them. */
export function tableWithoutFaults(file: TableFile & { kind: 'entry' | 'csv' }): Table {
  if (file.read.table) return file.read.table;
  if (file.kind === 'csv') {
    const [fault] = file.read.faults;
    if (fault) throw asCannotRun(file.source, fault);
  } else {
    const [fault] = file.read.faults;
    const { line, column } = file.entry.place(fault?.path ?? [], fault?.part);
    const where = `${file.content}/${file.entry.file}:${line}:${column}`;
    throw new CannotRun(`${where}: ${fault?.message}`, fault?.help ?? 'Run readback check.');
  }
  throw new Error('a table without faults is one');
}
