/** A table cut into pieces once; what was decided is remembered, as many profiles are alike to a table. */
import { gridOf } from '../tables/grid/cut-table.ts';
import type { Grid } from '../tables/grid/grid.ts';
import { openPieces } from '../tables/grid/open-pieces.ts';
import { possibleHits } from '../tables/grid/possible.ts';
import { answerKey, type Decided, decided, type Known, type Table } from '../tables/index.ts';

/** For each column, the indexes of the pieces its value may lie in. */
export type Open = readonly (readonly number[])[];

export interface Outcome {
  /** The same for the same answers. */
  readonly key: string;
  /** Every answer that is possible. */
  readonly answers: readonly Decided[];
  /** Ids of the rules that may decide, in the order of the table. */
  readonly rules: readonly string[];
}

export class DecidedTable {
  readonly table: Table;
  readonly grid: Grid;
  readonly #known = new Map<string, Outcome>();

  /** @param cuts further numbers to cut at, by column id. */
  constructor(table: Table, cuts: Readonly<Record<string, readonly number[]>> = {}) {
    this.table = table;
    this.grid = gridOf(table, cuts);
  }

  /** The pieces each column may lie in; one of which nothing is known may be anything. */
  openOf(known: Readonly<Record<string, Known>>): Open {
    return this.grid.map((input) => openPieces(input, known[input.input.id] ?? { anything: true }));
  }

  outcome(open: Open): Outcome {
    const name = open.map((pieces) => pieces.join()).join(';');
    const known = this.#known.get(name);
    if (known) return known;
    const outcome = this.#decide(open);
    this.#known.set(name, outcome);
    return outcome;
  }

  #decide(open: Open): Outcome {
    const ends = possibleHits(this.grid, open).map((leaf) =>
      decided(
        this.table,
        leaf.flatMap((index) => this.table.rules[index] ?? []),
      ),
    );
    const byKey = [...new Map(ends.map((end) => [answerKey(end), end]))].sort(([a], [b]) => (a < b ? -1 : 1));
    const rules = new Set(ends.flatMap((end) => end.rules));
    return {
      key: byKey.map(([key]) => key).join('\n'),
      answers: byKey.map(([, end]) => end),
      rules: this.table.rules.flatMap(({ id }) => (rules.has(id) ? [id] : [])),
    };
  }
}
