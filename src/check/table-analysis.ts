/** What the analysis of a decision table finds, once for all the rules that speak of it. */
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import {
  analyseTable,
  type Box,
  type DeadRule,
  describeBox,
  describeGiven,
  type IdleInput,
  type Mergeable,
  type Overlap,
  type Part,
  type Table,
} from '../tables/index.ts';
import type { RuleInput } from './rule.ts';

/** Where in a table something holds, as text and by an example. */
export interface Case extends Pick<Box, 'words' | 'example'> {
  /** Ids of the inputs that make the case: the others may be anything. */
  readonly named: readonly string[];
}

/** What analysis finds, without what JSON cannot keep. */
export interface TableTroubles {
  /** Where an answer is missing, for policies that owe one. */
  readonly gaps: readonly (Case & { readonly notKnown: 'no' | 'too' | 'only' })[];
  /** Pairs of rules that hold together against the hit policy. */
  readonly overlaps: readonly (Case & Pick<Overlap, 'rules' | 'contradicts'>)[];
  /** How many such pairs there are, given or not. */
  readonly overlapCount: number;
  readonly dead: readonly DeadRule[];
  readonly idle: readonly IdleInput[];
  readonly mergeable: readonly Mergeable[];
  /** What ran out of steps: nothing more is known of it than what is given. */
  readonly unproved: readonly Part[];
}

export interface AnalysedTable {
  readonly entry: Entry<'tables'>;
  readonly table: Table;
  readonly troubles: TableTroubles;
}

/** Steps each kind of finding may take: about a second. */
const steps = 5_000_000;

/** Characters of a case in words: more are not read. */
const mostWords = 400;

/** Gaps to tell of one table; who has mended these is told the next. */
export const mostGaps = 5;

const ofAnswers = new WeakMap<Answers, readonly AnalysedTable[]>();

/** Every table that can be read, with its troubles; one with faults is not analysed. */
export function analysedTables({ answers, remember }: RuleInput): readonly AnalysedTable[] {
  const known = ofAnswers.get(answers);
  if (known) return known;
  const all = [...answers.tables].flatMap(([id, { table }]): AnalysedTable[] => {
    const entry = answers.base.tables.get(id);
    if (!entry || !table) return [];
    const troubles = remember(['table-analysis', entry.digest], () => troublesOf(entry, table));
    return [{ entry, table, troubles }];
  });
  ofAnswers.set(answers, all);
  return all;
}

function troublesOf(entry: Entry<'tables'>, table: Table): TableTroubles {
  const found = analyseTable(table, { mostGaps, steps });
  const breaking = found.overlaps.filter(({ breaks }) => breaks);
  const isCut: Readonly<Record<Part, boolean>> = {
    // That there are more than are asked for is no lack of proof.
    gaps: found.gaps.length < mostGaps,
    overlaps: found.breakingCount <= breaking.length,
    'harmless overlaps': false,
    dead: true,
    idle: true,
  };
  return {
    gaps: found.gapsAreFaults
      ? found.gaps.map(({ box, notKnown }) => ({ ...caseOf(table, box), notKnown }))
      : [],
    overlaps: breaking.map(({ box, rules, contradicts }) => ({ ...caseOf(table, box), rules, contradicts })),
    overlapCount: found.breakingCount,
    dead: found.dead,
    idle: found.idle.some(({ tested }) => tested) ? idleInWords(entry, table) : found.idle,
    mergeable: found.mergeable,
    unproved: found.cut.filter((part) => isCut[part]),
  };
}

/** Inputs that change neither the answer nor what is said with it: the words count as one more output. */
function idleInWords({ data }: Entry<'tables'>, table: Table): readonly IdleInput[] {
  const said = data.rules.map(({ say, guides, profiles }) => JSON.stringify([say, guides, profiles]));
  const words = { id: ' words', label: '', type: { kind: 'text' }, priorities: [], otherwise: '' } as const;
  const { idle } = analyseTable(
    {
      ...table,
      outputs: [...table.outputs, words],
      rules: table.rules.map((rule, index) => ({ ...rule, results: [...rule.results, said[index] ?? ''] })),
    },
    { steps },
  );
  // Under other policies several rules speak at once, and which of them do is not looked into.
  const isExact = ['first', 'unique', 'priority'].includes(table.hitPolicy) || new Set(said).size === 1;
  return idle.filter(({ tested }) => isExact || !tested);
}

function caseOf({ inputs }: Table, { words, example, sets }: Box): Case {
  const named = inputs.filter((input, index) => {
    const set = sets[index];
    return set !== undefined && describeBox([set], [input]) !== describeBox([], []);
  });
  return {
    words: words.length > mostWords ? `${words.slice(0, mostWords)}…` : words,
    example,
    named: named.map(({ id }) => id),
  };
}

/** The dead rules that no overlap speaks for already. */
export function deadAlone({ dead, overlaps, overlapCount }: TableTroubles): readonly DeadRule[] {
  if (overlapCount > overlaps.length) return [];
  const overlapping = new Set(overlaps.flatMap(({ rules }) => rules));
  return dead.filter(({ rule }) => !overlapping.has(rule));
}

/** Whether every case has one answer, and every rule a case: smaller troubles are told only then. */
export function isSound({ gaps, overlaps, dead }: TableTroubles): boolean {
  return gaps.length === 0 && overlaps.length === 0 && dead.length === 0;
}

/** The index of a rule by its id. */
export function ruleAt({ rules }: Table, id: string): number {
  return rules.findIndex((rule) => rule.id === id);
}

/** Inputs to name in an example, unless more than these make the case. */
const mostNamed = 6;

/** One combination of values, in words; of a wide table only the inputs that make the case. */
export function exampleWords({ inputs }: Table, { example, named }: Case): string {
  const told = inputs.length <= mostNamed ? inputs : inputs.filter(({ id }) => named.includes(id));
  return describeGiven(example, told.length === 0 ? inputs.slice(0, mostNamed) : told);
}
