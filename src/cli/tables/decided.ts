/** What a table answers to the values given, exact or with their uncertainty: for entries, DMN files and CSV files. */
import { date } from 'feelin';
import type { TableDecideResult, TableOutputs } from '../../../schemas/results/table-decide.ts';
import { CannotRun } from '../../base/index.ts';
import {
  type DmnDecision,
  type DmnFile,
  decideDmn,
  neededBy,
  tableOfDecision,
} from '../../tables/dmn/index.ts';
import { givesList } from '../../tables/hit-policy.ts';
import {
  type Decided,
  evaluateTable,
  evaluateWithin,
  type Given,
  isAnalysable,
  type Known,
  type Table,
  type Value,
} from '../../tables/index.ts';
import { type Asked, type GivenValue, givenValues } from './given-values.ts';

/**
 * A table whose inputs are its own.
 * @throws CannotRun where the values cannot be read, or their uncertainty not be carried through.
 */
export function decideTable(name: string, table: Table, texts: readonly string[]): TableDecideResult {
  const given = givenValues(
    texts,
    table.inputs.map(({ id, label, type }) => ({ name: id, label, type })),
  );
  const notes = notGiven(
    table.inputs.map(({ id }) => id),
    given,
  );
  return isUncertain(given)
    ? decideWithin(name, table, given, notes)
    : { ...decideExactly(name, table, given), notes };
}

function decideExactly(
  name: string,
  table: Table,
  given: ReadonlyMap<string, GivenValue>,
): TableDecideResult {
  const values: Given = Object.fromEntries([...given].map(([id, { value }]) => [id, value as Value]));
  const answer = shown(table, evaluateTable(table, values));
  return {
    table: name,
    ...answer,
    borderline: false,
    possible: [answer],
    settledBy: [],
    required: [],
    notes: [],
  };
}

function decideWithin(
  name: string,
  table: Table,
  given: ReadonlyMap<string, GivenValue>,
  notes: string[],
): TableDecideResult {
  if (!isAnalysable(table)) {
    throw new CannotRun(
      `“${name}” has tests that are expressions: what is possible within an uncertainty cannot be proved for them.`,
      'Give exact values, once for each end of what is uncertain.',
    );
  }
  const known = table.inputs.map(({ id }): readonly [string, Known] => {
    const { value = null, uncertainty } = given.get(id) ?? {};
    return [
      id,
      uncertainty === undefined || typeof value !== 'number'
        ? { value: value as Value }
        : { value, low: value - uncertainty, high: value + uncertainty },
    ];
  });
  // What is not given is not known, in DMN one more value, whether or not the table reckons with it.
  const missing = new Set(known.filter(([, one]) => 'value' in one && one.value === null).map(([id]) => id));
  const inputs = table.inputs.map((one) => (missing.has(one.id) ? { ...one, mayBeMissing: true } : one));
  const within = evaluateWithin({ ...table, inputs }, Object.fromEntries(known));
  const possible = within.possible.map((one) => shown(table, one));
  const [first] = possible;
  const best = within.best ? shown(table, within.best) : first;
  if (!best) throw new Error('a table answers something to every value');
  return {
    table: name,
    ...best,
    borderline: within.borderline,
    possible,
    settledBy: [...within.settledBy],
    required: [],
    notes,
  };
}

/**
 * A decision of a DMN file, with those it requires.
 * @throws CannotRun as {@link decideTable}; UnusableFile where the file cannot decide it.
 */
export function decideDecision(
  file: DmnFile,
  decision: DmnDecision,
  texts: readonly string[],
): TableDecideResult {
  const { decisions, inputs } = neededBy(file, decision);
  // An input that says no type is of the one that the tests of a table take it for.
  const columns = decisions.flatMap((one) => tableOfDecision(file, one).written?.inputs ?? []);
  const asked = inputs.map(({ name, label, type }): Asked => {
    const column = columns.find(({ id }) => id === name);
    return { name, label, type: type.kind === 'any' ? (column?.type ?? type) : type };
  });
  const given = givenValues(texts, asked);
  const notes = notGiven(
    asked.map(({ name }) => name),
    given,
  );
  if (isUncertain(given)) return decideWithin(decision.name, plainTable(file, decision), given, notes);
  const dates = new Set(asked.filter(({ type }) => type.kind === 'date').map(({ name }) => name));
  const values = [...given].map(([name, { value }]) => [
    name,
    dates.has(name) && typeof value === 'string' ? date(value) : value,
  ]);
  const {
    answers,
    isList,
    rules,
    broken,
    required,
    notes: more,
  } = decideDmn(file, decision, Object.fromEntries(values));
  const outputs: TableOutputs = isList ? [...answers] : (answers[0] ?? null);
  const answer = {
    outputs: broken === undefined ? outputs : null,
    rules: [...rules],
    broken: broken ?? null,
  };
  return {
    table: decision.name,
    ...answer,
    borderline: false,
    possible: [answer],
    settledBy: [],
    required: required.map((one) => ({ ...one, rules: [...one.rules] })),
    notes: [...notes, ...more],
  };
}

/** The table of a decision that takes nothing but inputs, for values with uncertainty. */
function plainTable(file: DmnFile, decision: DmnDecision): Table {
  const { decisions } = neededBy(file, decision);
  const { table, beyond } = tableOfDecision(file, decision);
  if (table && decisions.length === 1) return table;
  const why =
    decisions.length > 1
      ? `it needs other decisions (${decisions
          .slice(0, -1)
          .map(({ name }) => `“${name}”`)
          .join(', ')})`
      : (beyond?.message ?? 'its table has faults');
  throw new CannotRun(
    `“${decision.name}” cannot be decided on uncertain values: ${why}.`,
    'Give exact values, once for each end of what is uncertain.',
  );
}

function isUncertain(given: ReadonlyMap<string, GivenValue>): boolean {
  return [...given.values()].some(({ uncertainty }) => uncertainty !== undefined && uncertainty > 0);
}

function notGiven(names: readonly string[], given: ReadonlyMap<string, GivenValue>): string[] {
  const missing = names.filter((name) => !given.has(name)).map((name) => `“${name}”`);
  if (missing.length === 0) return [];
  return [`Not given, and so taken for not known (null): ${missing.join(', ')}.`];
}

function shown(
  table: Table,
  { answers, rules, broken }: Decided,
): Pick<TableDecideResult, 'outputs' | 'rules' | 'broken'> {
  const list = answers.map((one) => ({ ...one }));
  const outputs = givesList(table) ? list : (list[0] ?? null);
  return { outputs: broken === undefined ? outputs : null, rules: [...rules], broken: broken ?? null };
}

/** Whether there is an answer: a list that is empty is none. */
export function hasAnswer({ outputs, broken }: Pick<TableDecideResult, 'outputs' | 'broken'>): boolean {
  return broken === null && outputs !== null && (!Array.isArray(outputs) || outputs.length > 0);
}
