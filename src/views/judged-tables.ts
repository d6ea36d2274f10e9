/** The decision tables made ready for pages: cut into pieces, and what is known of a profile in their pieces. */
import type { TableEntryInput } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import { type JudgedProfile, knownOfProfile } from '../decide/index.ts';
import { gridOf } from '../tables/grid/cut-table.ts';
import type { Grid } from '../tables/grid/grid.ts';
import { openPieces } from '../tables/grid/open-pieces.ts';
import type { Table } from '../tables/index.ts';
import { decider, type Open, type Outcome, type OutputData, type TableData } from './table-outcomes.ts';

export interface JudgedTable {
  readonly entry: Entry<'tables'>;
  readonly table: Table;
  readonly grid: Grid;
  readonly data: TableData;
  readonly decide: (open: Open) => Outcome;
  /** Whether it asks what only the planner can work out: of no profile alone can its answer be told. */
  readonly isForPlans: boolean;
}

/** The tables without faults, in the order they are listed in: once made, the same for all who ask of these answers. */
export function judgedTables(answers: Answers): readonly JudgedTable[] {
  const known = made.get(answers) ?? tablesMade(answers);
  made.set(answers, known);
  return known;
}

const made = new WeakMap<Answers, readonly JudgedTable[]>();

function tablesMade(answers: Answers): JudgedTable[] {
  return [...answers.tables].flatMap(([id, { table }]) => {
    const entry = answers.base.tables.get(id);
    if (!entry || !table) return [];
    const grid = gridOf(table);
    const data = tableData(table, grid);
    const isForPlans = entry.data.inputs.some(({ holds }) => holds === 'reckoned');
    return [{ entry, table, grid, data, decide: decider(data), isForPlans }];
  });
}

/** The tables a profile alone can be held against: those that decide plans are the planner’s. */
export function tablesOfProfiles(answers: Answers): JudgedTable[] {
  return judgedTables(answers).filter(({ isForPlans }) => !isForPlans);
}

/** Whether the rider is asked for it; the rest is known of the profile. */
export function isAsked({ holds }: TableEntryInput): boolean {
  return holds !== 'characteristic' && holds !== 'trait';
}

/** For each input the pieces it may lie in: what was measured of the profile; what the rider is asked may be any. */
export function openOf({ entry, grid }: JudgedTable, profile: JudgedProfile): number[][] {
  const known = knownOfProfile(entry.data.inputs, profile);
  return grid.map((input) => openPieces(input, known[input.input.id] ?? { anything: true }));
}

/** A table cut into pieces, as all that is needed to decide it. */
export function tableData(table: Table, grid: Grid): TableData {
  const outputs = table.outputs.map(({ id, label, type, priorities, otherwise }): OutputData => {
    const unit = type.kind === 'number' ? type.unit : undefined;
    return {
      id,
      label,
      values: priorities,
      ...(unit === undefined ? {} : { unit }),
      ...(otherwise === undefined ? {} : { otherwise }),
    };
  });
  return {
    hit: table.hitPolicy,
    ...(table.aggregation === undefined ? {} : { aggregate: table.aggregation }),
    outputs,
    rules: table.rules.map(({ id, results }) => ({ id, gives: results })),
    passes: grid.map(({ passes }) => passes.map((marks) => [...marks].join(''))),
  };
}
