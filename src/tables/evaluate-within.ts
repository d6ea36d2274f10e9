/** What a table may answer where values are not known exactly. */
import { decided } from './decided.ts';
import { cutTable, isAnalysable } from './grid/cut-table.ts';
import type { Table } from './table.ts';
import { evaluateCut, type Known, type Within } from './within.ts';

/**
 * Evaluates a table on what is known. An input left out may be anything.
 * @throws where a test of the table is no simple one (see `isAnalysable`): then only exact values can be decided.
 */
export function evaluateWithin(table: Table, known: Readonly<Record<string, Known | undefined>>): Within {
  if (!isAnalysable(table)) throw new Error('a test of this table is more than S-FEEL');
  return evaluateCut(cutTable(table), known, decided);
}
