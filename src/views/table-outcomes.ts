/**
 * What a decision table comes to while some inputs are open: which rules give the answer, surely or perhaps, and on
 * what it depends. Without the FEEL library, so that pages and their script reckon alike.
 */

import { decided } from '../tables/decided.ts';
import { type Leaf, possibleHits } from '../tables/grid/possible.ts';
import type { Table, Value } from '../tables/table.ts';
import { phrase } from '../words/index.ts';

/** A table cut into pieces, as plain data: all that is needed to decide. */
export interface TableData {
  readonly hit: Table['hitPolicy'];
  readonly aggregate?: Exclude<Table['aggregation'], undefined>;
  readonly outputs: readonly OutputData[];
  readonly rules: readonly { readonly id: string; readonly gives: readonly Value[] }[];
  /** For each input, for each rule, a `1` for each piece it lets through and a `0` for the others. */
  readonly passes: readonly (readonly string[])[];
}

export interface OutputData {
  readonly id: string;
  readonly label: string;
  readonly unit?: string;
  /** Answers in their order; empty where they are no choice. */
  readonly values: readonly Value[];
  readonly otherwise?: Value;
}

/** For each input, the indexes of the pieces its value may lie in. */
export type Open = readonly (readonly number[])[];

export type Sureness = 'sure' | 'perhaps';

export interface Outcome {
  /** The rules an answer comes from, by index; those that cannot give one are left out. */
  readonly rules: ReadonlyMap<number, Sureness>;
  /** Each answer in words; of a table that gives several, each of them by itself. */
  readonly answers: ReadonlyMap<string, PossibleAnswer>;
  /** Indexes of the inputs that still have a say. */
  readonly dependsOn: readonly number[];
  /** Indexes of the inputs each of which would settle it. */
  readonly settledBy: readonly number[];
}

export interface PossibleAnswer {
  readonly sureness: Sureness;
  /** Indexes of the inputs that have a say in whether it is given. */
  readonly dependsOn: readonly number[];
}

/** Said where the rules that fit break the hit policy, and where no rule fits. */
export function brokenWords(): string {
  return phrase('the rules contradict each other');
}
export function noAnswerWords(): string {
  return phrase('no rule says');
}

/** Decides a table; what was decided once is remembered, as many profiles are alike to a table. */
export function decider(data: TableData): (open: Open) => Outcome {
  const grid = data.passes.map((rules) => ({
    passes: rules.map((marks) => Uint8Array.from(marks, Number)),
  }));
  const table = tableFrom(data);
  const known = new Map<string, Outcome>();
  return (open) => {
    const key = open.join(';');
    const outcome = known.get(key) ?? outcomeOf(table, data, grid, open);
    known.set(key, outcome);
    return outcome;
  };
}

type Grid = readonly { readonly passes: readonly Uint8Array[] }[];

function tableFrom({ hit, aggregate, outputs, rules }: TableData): Table {
  return {
    name: '',
    hitPolicy: hit,
    aggregation: aggregate,
    inputs: [],
    outputs: outputs.map(({ id, label, values, otherwise }) => {
      return { id, label, type: { kind: 'text' }, priorities: values, otherwise };
    }),
    rules: rules.map(({ id, gives }) => ({ id, cells: [], results: gives })),
  };
}

function outcomeOf(table: Table, data: TableData, grid: Grid, open: Open): Outcome {
  const endsOf = (within: Open) => possibleHits(grid, within).map((leaf) => endOf(table, data, leaf));
  const ends = endsOf(open);
  const answers = sureness(ends.map((end) => end.answers));
  const says = new Map<string, number[]>([...answers.keys()].map((answer) => [answer, []]));
  const dependsOn: number[] = [];
  const settledBy: number[] = [];
  const isOpen = keysOf(ends).size > 1;
  for (const [input, pieces] of isOpen ? open.entries() : []) {
    if (pieces.length < 2) continue;
    const left = pieces.map((piece) => endsOf(open.map((one, at) => (at === input ? [piece] : one))));
    const keys = left.map((one) => keysOf(one));
    if (keys.every(({ size }) => size === 1)) settledBy.push(input);
    if (new Set(keys.map((one) => [...one].sort().join('\n'))).size > 1) dependsOn.push(input);
    const given = left.map((one) => sureness(one.map((end) => end.answers)));
    for (const [answer, inputs] of says) {
      if (new Set(given.map((one) => one.get(answer))).size > 1) inputs.push(input);
    }
  }
  return {
    rules: sureness(ends.map(({ rules }) => rules)),
    answers: new Map(
      [...answers].map(([answer, sure]) => [answer, { sureness: sure, dependsOn: says.get(answer) ?? [] }]),
    ),
    dependsOn,
    settledBy,
  };
}

interface End {
  readonly key: string;
  readonly rules: readonly number[];
  readonly answers: readonly string[];
}

function keysOf(ends: readonly End[]): Set<string> {
  return new Set(ends.map(({ key }) => key));
}

/** What one set of rules that fit comes to. */
function endOf(table: Table, data: TableData, leaf: Leaf): End {
  const one = decided(
    table,
    leaf.flatMap((index) => table.rules[index] ?? []),
  );
  const answers = one.answers.map((answer) => answerWords(Object.values(answer), data.outputs));
  return {
    key: JSON.stringify([one.answers, one.broken !== undefined]),
    rules: one.rules.map((id) => table.rules.findIndex((rule) => rule.id === id)),
    answers: one.broken !== undefined ? [brokenWords()] : answers.length > 0 ? answers : [noAnswerWords()],
  };
}

/** Sure is what is there in every case. */
function sureness<Item>(cases: readonly (readonly Item[])[]): Map<Item, Sureness> {
  const counts = new Map<Item, number>();
  for (const one of cases) for (const item of new Set(one)) counts.set(item, (counts.get(item) ?? 0) + 1);
  return new Map([...counts].map(([item, count]) => [item, count === cases.length ? 'sure' : 'perhaps']));
}

/** One answer in words; with several outputs, each with its label. */
export function answerWords(values: readonly Value[], outputs: readonly OutputData[]): string {
  const words = outputs.map(({ unit }, index) => {
    const value = values[index] ?? null;
    if (value === null) return phrase('nothing');
    if (typeof value === 'boolean') return value ? phrase('yes') : phrase('no');
    return typeof value === 'number' && unit !== undefined ? `${value}\u00a0${unit}` : String(value);
  });
  if (words.length < 2) return words[0] ?? '';
  return words.map((word, index) => `${outputs[index]?.label}: ${word}`).join('; ');
}
