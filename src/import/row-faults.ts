/** What of the rows of a sheet is not understood: every fault counted, the first of them kept. */
import { type Cell, cellText, type SheetRow } from './cell.ts';

/** A row, or a cell of it, that is not understood. */
export interface RowFault {
  readonly row: number;
  readonly line: number;
  /** `B7`, or the row alone. */
  readonly place: string;
  readonly text: string;
  readonly problem: string;
  readonly help: string;
}

const mostFaults = 10_000;

export class RowFaults {
  /** While it is true nothing is added: of rows that are left out no faults are told. */
  isSilent = false;
  readonly #kept: RowFault[] = [];
  #count = 0;

  /** All there were, those not kept included. */
  get count(): number {
    return this.#count;
  }

  /** Those kept, in the order of the sheet. */
  inOrder(): readonly RowFault[] {
    return this.#kept.sort((a, b) => a.row - b.row);
  }

  /** @param place `B7`, or the row alone; `cell` what stands there. */
  add(
    { row, line }: Pick<SheetRow, 'row' | 'line'>,
    place: string,
    cell: Cell | undefined,
    problem: string,
    help: string,
  ): void {
    if (this.isSilent) return;
    this.#count += 1;
    if (this.#kept.length >= mostFaults) return;
    this.#kept.push({ row, line, place, text: cellText(cell), problem, help });
  }
}
