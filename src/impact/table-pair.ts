/** A decision table in two states, held against each other case by case: over pieces, so exactly and without samples. */
import type { Entry } from '../base/index.ts';
import { type JudgedProfile, knownOfProfile } from '../decide/index.ts';
import { gridOf } from '../tables/grid/cut-table.ts';
import { type GridInput, pieceOf, sample } from '../tables/grid/grid.ts';
import type { Decided, Table, Value } from '../tables/index.ts';
import { DecidedTable, type Open, type Outcome } from './decided-table.ts';

/**
 * More cases than this are not gone through one by one: then what the rider is asked with the most values is left
 * open, and the answers that are possible together are compared.
 */
export const mostCases = 400;

/** What was or is answered. */
export interface PossibleAnswers {
  /** Every answer that is possible in the first case that differs. */
  readonly answers: readonly Decided[];
  /** Ids of the rules that may decide in any case that differs, in the order of the table. */
  readonly rules: readonly string[];
}

export interface TableDifference {
  readonly before: PossibleAnswers;
  readonly now: PossibleAnswers;
  /** How many cases there are of what the rider may say, and in how many of them the answers differ. */
  readonly cases: number;
  readonly differing: number;
  /** What the rider says in the first case that differs, by the id of the column; empty where he has no say. */
  readonly example: Readonly<Record<string, Value>>;
  /** Whether the table as it is now, with the profile as it was, answers differently; and the other way round. */
  readonly byTable: boolean;
  readonly byProfile: boolean;
}

type Side = 'before' | 'now';

/** Both states of one table. */
export class TablePair {
  readonly #sides: Readonly<Record<Side, TableSide>>;
  readonly #cases: readonly Case[];

  constructor(before: EntryWithTable, now: EntryWithTable) {
    const cuts = (of: EntryWithTable) => endsOfAsked(of);
    this.#sides = {
      before: new TableSide(before, cuts(now)),
      now: new TableSide(now, cuts(before)),
    };
    this.#cases = casesOf(this.#sides);
  }

  /** Where the answers to a profile differ; undefined where they do not. */
  difference(before: JudgedProfile, now: JudgedProfile): TableDifference | undefined {
    const sides = this.#sides;
    const [was, is] = [sides.before.openFor(before), sides.now.openFor(now)];
    const [tableAlone, profileAlone] = [sides.now.openFor(before), sides.before.openFor(now)];
    const differing: { one: Case; was: Outcome; is: Outcome }[] = [];
    let [byTable, byProfile] = [false, false];
    for (const one of this.#cases) {
      const first = sides.before.outcomeOf(was, one.before);
      const last = sides.now.outcomeOf(is, one.now);
      if (first.key === last.key) continue;
      differing.push({ one, was: first, is: last });
      byTable ||= sides.now.outcomeOf(tableAlone, one.now).key !== first.key;
      byProfile ||= sides.before.outcomeOf(profileAlone, one.before).key !== first.key;
    }
    const [first] = differing;
    if (!first) return undefined;
    return {
      before: { answers: first.was.answers, rules: rulesOf(sides.before.table, differing, 'was') },
      now: { answers: first.is.answers, rules: rulesOf(sides.now.table, differing, 'is') },
      cases: this.#cases.length,
      differing: differing.length,
      example: first.one.said,
      byTable,
      byProfile,
    };
  }
}

interface EntryWithTable {
  readonly entry: Entry<'tables'>;
  readonly table: Table;
}

/** One state of it. */
class TableSide extends DecidedTable {
  readonly entry: Entry<'tables'>;

  constructor({ entry, table }: EntryWithTable, cuts: Readonly<Record<string, readonly number[]>>) {
    super(table, cuts);
    this.entry = entry;
  }

  /** The pieces each column may lie in, by what is known of the profile alone. */
  openFor(profile: JudgedProfile): Open {
    return this.openOf(knownOfProfile(this.entry.data.inputs, profile));
  }

  /** The outcome where the rider has said something: the piece of a column, by its index. */
  outcomeOf(open: Open, said: ReadonlyMap<number, number>): Outcome {
    return this.outcome(
      open.map((pieces, at) => {
        const piece = said.get(at);
        return piece === undefined ? pieces : [piece];
      }),
    );
  }
}

function rulesOf(
  { rules }: Table,
  differing: readonly Readonly<Record<'was' | 'is', Outcome>>[],
  side: 'was' | 'is',
): string[] {
  const deciding = new Set(differing.flatMap((one) => one[side].rules));
  return rules.flatMap(({ id }) => (deciding.has(id) ? [id] : []));
}

/** One thing the rider may say: the value of each column he is asked, and the piece it lies in on either side. */
interface Case {
  readonly said: Readonly<Record<string, Value>>;
  readonly before: ReadonlyMap<number, number>;
  readonly now: ReadonlyMap<number, number>;
}

/** Whether the rider is asked for it; the rest is known of the profile. */
function isAsked({ entry }: EntryWithTable, id: string): boolean {
  const input = entry.data.inputs.find((one) => one.id === id);
  return input !== undefined && input.holds !== 'characteristic' && input.holds !== 'trait';
}

/** The numbers that one state of the table cuts at: the other is cut there too, so that both have the same cases. */
function endsOfAsked(of: EntryWithTable): Record<string, number[]> {
  return Object.fromEntries(
    gridOf(of.table)
      .filter(({ input }) => isAsked(of, input.id))
      .map(({ input, pieces }) => [
        input.id,
        pieces.flatMap((piece) => ('low' in piece ? [piece.low, piece.high].filter(Number.isFinite) : [])),
      ]),
  );
}

function casesOf(sides: Readonly<Record<Side, TableSide>>): Case[] {
  const { before, now } = sides;
  const asked = new Map<string, Value[]>();
  for (const side of [before, now]) {
    for (const { input, pieces } of side.grid) {
      if (!isAsked(side, input.id)) continue;
      const values = [...(asked.get(input.id) ?? []), ...pieces.map(sample)];
      asked.set(input.id, [...new Set(values)]);
    }
  }
  // In an order that does not hang on which of the states came first.
  const columns = [...asked]
    .map(([id, values]) => [id, values.sort(inOrder)] as const)
    .sort(([a, some], [b, others]) => some.length - others.length || inOrder(a, b));
  let cases: Case[] = [{ said: {}, before: new Map(), now: new Map() }];
  for (const [id, values] of columns) {
    if (cases.length * values.length > mostCases) break;
    cases = cases.flatMap((one) =>
      values.map((value) => ({
        said: { ...one.said, [id]: value },
        before: withPiece(one.before, before.grid, id, value),
        now: withPiece(one.now, now.grid, id, value),
      })),
    );
  }
  return cases;
}

/** Numbers by size, texts by code units, yes before no, “not known” last. */
function inOrder(a: Value, b: Value): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  const text = (value: Value): string => (value === null ? '\uffff' : value === true ? '' : String(value));
  return text(a) < text(b) ? -1 : text(a) > text(b) ? 1 : 0;
}

/** A value that the column of one state cannot have leaves it open there. */
function withPiece(
  pieces: ReadonlyMap<number, number>,
  grid: readonly GridInput[],
  id: string,
  value: Value,
): ReadonlyMap<number, number> {
  const at = grid.findIndex(({ input }) => input.id === id);
  const column = grid[at];
  const piece = column && pieceOf(column, value);
  return piece === undefined ? pieces : new Map([...pieces, [at, piece]]);
}
