/** What decision tables answer differently to the profiles, and which of their rules were edited. */
import { isDeepStrictEqual } from 'node:util';
import type { TableEntryRule } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import type { JudgedProfile } from '../decide/index.ts';
import type { Table } from '../tables/index.ts';
import type { Cause } from './causes.ts';
import { differsDecisively } from './decisive.ts';
import type { States } from './states.ts';
import { type TableDifference, TablePair } from './table-pair.ts';

export interface TableAnswerChange extends TableDifference {
  /** The table's id now. */
  readonly table: string;
  readonly causes: readonly Cause[];
}

/** What became of the rules of a table, by their ids. */
export interface RuleEdits {
  readonly table: string;
  readonly added: readonly string[];
  readonly removed: readonly string[];
  /** Rules whose tests or answers differ. */
  readonly edited: readonly string[];
  /** Whether columns, answers or the hit policy differ, or rules stand in another order. */
  readonly otherwise: boolean;
}

/** The tables that are in both states and ask nothing only the planner can work out: those are judged as plans. */
export class TableComparisons {
  readonly #pairs: readonly {
    readonly id: string;
    readonly differs: boolean;
    readonly make: () => TablePair;
  }[];
  readonly #made = new Map<string, TablePair>();

  constructor(states: States) {
    this.#pairs = [...states.pairs('tables')].flatMap(([id, pair]) => {
      const [before, now] = [withTable(states.before, pair.before), withTable(states.now, pair.now)];
      if (!before || !now) return [];
      return [{ id, differs: differsDecisively(pair), make: () => new TablePair(before, now) }];
    });
  }

  /**
   * What the tables say differently of a profile.
   * @param causesOfProfile empty where nothing of the profile differs: then only edited tables are looked at.
   */
  changes(
    before: () => JudgedProfile,
    now: () => JudgedProfile,
    causesOfProfile: readonly Cause[],
  ): TableAnswerChange[] {
    return this.#pairs.flatMap(({ id, differs, make }) => {
      if (!differs && causesOfProfile.length === 0) return [];
      const pair = this.#made.get(id) ?? make();
      this.#made.set(id, pair);
      const difference = pair.difference(before(), now());
      if (!difference) return [];
      const { byTable, byProfile } = difference;
      // Where neither alone makes the difference, both together do.
      const table: Cause[] = differs && (byTable || !byProfile) ? [tableCause(id, difference)] : [];
      const profile = byProfile || !byTable ? causesOfProfile : [];
      return [{ ...difference, table: id, causes: [...table, ...profile] }];
    });
  }
}

function tableCause(id: string, { before, now }: TableDifference): Cause {
  return { kind: 'tables', id, rules: [...new Set([...before.rules, ...now.rules])] };
}

function withTable(
  { tables }: Answers,
  entry: Entry<'tables'> | undefined,
): { entry: Entry<'tables'>; table: Table } | undefined {
  const table = entry && tables.get(entry.id)?.table;
  const isForPlans = entry?.data.inputs.some(({ holds }) => holds === 'reckoned');
  return entry && table && !isForPlans ? { entry, table } : undefined;
}

/** The rules of every table whose rules, columns or answers were edited. */
export function ruleEdits(states: States): RuleEdits[] {
  return [...states.pairs('tables')].flatMap(([table, pair]): RuleEdits[] => {
    const { before, now } = pair;
    if (!before || !now || !differsDecisively(pair)) return [];
    const [rulesBefore, rulesNow] = [before, now].map(
      ({ data }) => new Map(data.rules.map((rule) => [rule.id, rule])),
    ) as [Map<string, TableEntryRule>, Map<string, TableEntryRule>];
    const [idsBefore, idsNow] = [[...rulesBefore.keys()], [...rulesNow.keys()]];
    const added = idsNow.filter((id) => !rulesBefore.has(id));
    const removed = idsBefore.filter((id) => !rulesNow.has(id));
    const edited = idsNow.filter((id) => {
      const [was, is] = [rulesBefore.get(id), rulesNow.get(id)];
      return was && is && !isDeepStrictEqual([was.when, was.give], [is.when, is.give]);
    });
    const kept = idsNow.filter((id) => rulesBefore.has(id));
    const otherOrder = !isDeepStrictEqual(
      kept,
      idsBefore.filter((id) => rulesNow.has(id)),
    );
    const rulesAlone = added.length + removed.length + edited.length > 0;
    return [{ table, added, removed, edited, otherwise: otherOrder || !rulesAlone }];
  });
}
