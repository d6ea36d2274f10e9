/** What a decision of a DMN file answers, with the decisions it requires decided first (DMN 1.3, 6.2 and 8.2). */

import { decided } from '../decided.ts';
import { type Span, UnusableFile } from '../file-fault.ts';
import { givesList } from '../hit-policy.ts';
import type { Table, TableRule, Value } from '../table.ts';
import { type Context, evaluated, type PlainValue, passes, plainValue } from './expression.ts';
import type { DmnDecision, DmnFile, DmnInput, DmnTable } from './model.ts';

export interface ChainAnswer {
  /** The answers: one, or as many as fit where the hit policy gives a list; none where no rule fits. */
  readonly answers: readonly Readonly<Record<string, PlainValue>>[];
  /** Whether the decision answers with a list. */
  readonly isList: boolean;
  /** The rules the answers come from, in the order of the table. */
  readonly rules: readonly string[];
  /** What is wrong where the rules that fit break a hit policy; there is no answer then. */
  readonly broken: string | undefined;
  /** What each decision it rests on came to, in the order they were decided. */
  readonly required: readonly {
    readonly decision: string;
    readonly value: PlainValue;
    readonly rules: readonly string[];
  }[];
  /** What the FEEL library had to say of expressions that do not come to a value. */
  readonly notes: readonly string[];
}

/** A name alone, such as `clean volts`. */
const plainName = /^[\p{L}_?][\p{L}\p{N}_]*( [\p{L}\p{N}_]+)*$/u;

export function isPlainName(text: string): boolean {
  return plainName.test(text) && !/^(true|false|null)$/.test(text);
}

/** More decisions in a row than anyone draws. */
const mostInARow = 200;

/**
 * The decisions a decision rests on, those that others need first, it last; and the inputs they take, including those
 * a table names without their being drawn as input data.
 * @throws UnusableFile where it needs itself, or something that is not there or not read.
 */
export function neededBy(
  file: DmnFile,
  wanted: DmnDecision,
): { readonly decisions: readonly DmnDecision[]; readonly inputs: readonly DmnInput[] } {
  const decisions: DmnDecision[] = [];
  const inputs = new Map<string, DmnInput>();
  const visit = (decision: DmnDecision, path: readonly DmnDecision[], from: Span): void => {
    if (path.includes(decision)) {
      const circle = [...path.slice(path.indexOf(decision)), decision].map(({ name }) => `“${name}”`);
      throw new UnusableFile(
        from,
        `${circle.join(' needs ')}: none of them can be decided first.`,
        'Take one of these requirements away.',
      );
    }
    if (path.length >= mostInARow) {
      throw new UnusableFile(
        from,
        `More than ${mostInARow} decisions need each other.`,
        'Join some of them.',
      );
    }
    if (decisions.includes(decision)) return;
    for (const { id, span } of decision.requires) {
      const refused = file.refused.find((one) => one.id === id);
      if (refused) throw new UnusableFile(refused.span, refused.message, refused.help);
      const input = file.inputs.find((one) => one.id === id);
      const other = file.decisions.find((one) => one.id === id);
      if (input) inputs.set(input.name, input);
      else if (other) visit(other, [...path, decision], span);
      else {
        throw new UnusableFile(
          span,
          `“${decision.name}” needs “${id}”, which is not in this file.`,
          'Export the file with all that its decisions need.',
        );
      }
    }
    for (const input of undrawn(file, decision)) if (!inputs.has(input.name)) inputs.set(input.name, input);
    decisions.push(decision);
  };
  visit(wanted, [], wanted.span);
  return { decisions, inputs: [...inputs.values()] };
}

/** Inputs a table tests that are no drawn requirement of its decision. */
function undrawn(file: DmnFile, { logic, requires }: DmnDecision): DmnInput[] {
  if (logic.kind !== 'table') return [];
  const drawn = requires.map(({ id }) => id);
  return logic.inputs.flatMap(({ expression, label, type, mayBeMissing }) => {
    const { text, span } = expression;
    if (!isPlainName(text)) return [];
    if (file.decisions.some(({ id, name }) => name === text && drawn.includes(id))) return [];
    const input = file.inputs.find(({ name }) => name === text);
    return [input ?? { id: text, name: text, label, type, mayBeMissing, span }];
  });
}

/**
 * @param given FEEL values of inputs by name; those left out are null.
 * @throws UnusableFile as {@link neededBy}, and where an expression cannot be evaluated.
 */
export function decideDmn(file: DmnFile, wanted: DmnDecision, given: Context): ChainAnswer {
  const { decisions, inputs } = neededBy(file, wanted);
  const notes = new Set<string>();
  const values = new Map<string, unknown>();
  const required: ChainAnswer['required'][number][] = [];
  const known = [...file.inputs, ...inputs].map(({ name }) => [name, given[name] ?? null] as const);
  for (const decision of decisions) {
    const results = decision.requires.flatMap(({ id }) => {
      const other = decisions.find((one) => one.id === id);
      return other ? [[other.name, values.get(other.id) ?? null] as const] : [];
    });
    const context: Context = Object.fromEntries([...known, ...results]);
    const step = decideOne(decision, context, notes);
    if (step.broken !== undefined || decision === wanted) {
      const of = decision === wanted ? '' : `“${decision.name}”, which it needs: `;
      const broken = step.broken === undefined ? undefined : `${of}${step.broken}`;
      const { answers, isList, rules } = step;
      return { answers, isList, rules, broken, required, notes: [...notes] };
    }
    values.set(decision.id, step.value);
    const text = { text: decision.name, span: decision.span };
    required.push({ decision: decision.name, value: plainValue(step.value, text), rules: step.rules });
  }
  throw new Error('a decision needs itself last');
}

type Step = Omit<ChainAnswer, 'required' | 'notes'> & { readonly value: unknown };

function decideOne({ name, logic }: DmnDecision, context: Context, notes: Set<string>): Step {
  if (logic.kind === 'table') return decideTable(name, logic, context, notes);
  const value = evaluated(logic, context, notes);
  const answers = [{ [name]: plainValue(value, logic) }];
  return { answers, isList: false, rules: [], broken: undefined, value };
}

function decideTable(name: string, table: DmnTable, context: Context, notes: Set<string>): Step {
  const tested = table.inputs.map(({ expression }) => evaluated(expression, context, notes));
  const fitting = table.rules.filter(({ tests }) =>
    tests.every((test, index) => passes(test, tested[index] ?? null, context, notes)),
  );
  // The hit policy compares plain values; what they stand for is put back in afterwards.
  const originals = table.outputs.map(() => new Map<Value, unknown>());
  const kept = (value: unknown, plain: PlainValue, column: number): Value => {
    const key = plain !== null && typeof plain === 'object' ? JSON.stringify(plain) : plain;
    originals[column]?.set(key, value);
    return key;
  };
  const resultOf = (text: DmnTable['rules'][number]['results'][number], column: number): Value => {
    if (text.text === '') return null;
    const value = evaluated(text, context, notes);
    return kept(value, plainValue(value, text), column);
  };
  const rules = fitting.map(
    (rule): TableRule => ({ id: rule.id, cells: [], results: rule.results.map(resultOf) }),
  );
  const plain: Table = {
    name,
    hitPolicy: table.hitPolicy,
    aggregation: table.aggregation,
    inputs: [],
    outputs: table.outputs.map((output, column) => ({
      id: output.name || name,
      label: output.label,
      type: { kind: 'text' },
      priorities: output.priorities,
      otherwise: output.otherwise && fitting.length === 0 ? resultOf(output.otherwise, column) : undefined,
    })),
    rules,
  };
  const result = decided(plain, rules);
  const original = (id: string, value: Value): unknown => {
    const values = originals[plain.outputs.findIndex((one) => one.id === id)];
    return values?.has(value) ? values.get(value) : value;
  };
  const answers = result.answers.map((answer) =>
    Object.fromEntries(Object.entries(answer).map(([id, value]) => [id, original(id, value)] as const)),
  );
  const isList = givesList(table);
  const [only] = answers;
  const single = (answer: Readonly<Record<string, unknown>> | undefined): unknown =>
    answer === undefined ? null : table.outputs.length > 1 ? answer : Object.values(answer)[0];
  return {
    answers: answers.map((answer) => plainAnswer(answer, table)),
    isList,
    rules: result.rules,
    broken: result.broken,
    value: isList ? answers.map(single) : single(only),
  };
}

function plainAnswer(
  answer: Readonly<Record<string, unknown>>,
  { span }: DmnTable,
): Record<string, PlainValue> {
  return Object.fromEntries(
    Object.entries(answer).map(([id, value]) => [id, plainValue(value, { text: id, span })]),
  );
}
