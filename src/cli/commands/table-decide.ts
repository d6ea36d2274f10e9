/** `readback table decide FILE --input NAME=VALUE …`: what does the table answer? */
import type { TableDecideResult, TableOutputs } from '../../../schemas/results/table-decide.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { decideDecision, decideTable, hasAnswer } from '../tables/decided.ts';
import { decisionNamed, noDecisionsHere, tableWithoutFaults } from '../tables/named-table.ts';
import { orCannotRun, readTableFile, type TableFile } from '../tables/table-file.ts';

export interface TableDecideOptions extends ContentOption, JsonOption {
  readonly input?: readonly string[];
  readonly decision?: string;
}

/** 0 an answer, 1 none or the hit policy broken, 2 could not run. */
export async function tableDecide(
  name: string,
  options: TableDecideOptions,
  output: Output,
): Promise<number> {
  const file = await orCannotRun(undefined, () => readTableFile(name, options));
  const source = file.kind === 'entry' ? undefined : file.source;
  const result = await orCannotRun(source, () => resultOf(file, options));
  if (options.json) printJson(output, result);
  else {
    for (const note of result.notes) output.err(note);
    output.out(resultText(result, file));
  }
  return hasAnswer(result) ? exitCodes.ok : exitCodes.findings;
}

function resultOf(file: TableFile, { decision, input = [] }: TableDecideOptions): TableDecideResult {
  if (file.kind === 'dmn') return decideDecision(file.file, decisionNamed(file, decision), input);
  noDecisionsHere(decision);
  return decideTable(file.id, tableWithoutFaults(file), input);
}

function resultText(result: TableDecideResult, file: TableFile): string {
  const lines = [
    ...result.required.map(({ decision, value }) => `${decision}: ${valueText(value)}`),
    ...answerLines(result, file, result.table, ''),
  ];
  if (!result.borderline) return lines.join('\n');
  const others = result.possible.filter(
    (one) => JSON.stringify(one.outputs) !== JSON.stringify(result.outputs) || one.broken !== result.broken,
  );
  return [
    ...lines,
    '',
    'Borderline: within the uncertainty given it may also be',
    ...others.flatMap((one) => answerLines(one, file, result.table, '  ')),
    result.settledBy.length === 0
      ? 'No value alone would settle it, were it known exactly.'
      : `Known exactly, ${result.settledBy.map((one) => `“${one}”`).join(' or ')} would settle it.`,
  ].join('\n');
}

function answerLines(
  { outputs, rules, broken }: Pick<TableDecideResult, 'outputs' | 'rules' | 'broken'>,
  file: TableFile,
  table: string,
  indent: string,
): string[] {
  const from = rules.map((rule) => `“${rule}”`).join(', ');
  if (broken !== null) return [`${indent}No answer: ${broken} They are ${from}.`];
  if (outputs === null || (Array.isArray(outputs) && outputs.length === 0)) {
    return [`${indent}No rule fits: there is no answer.`];
  }
  const answers = Array.isArray(outputs) ? outputs : [outputs];
  return [
    ...answers.map((one) => `${indent}${answerText(one)}`),
    ...(rules.length === 0
      ? file.kind === 'dmn'
        ? []
        : [`${indent}No rule fits: this is what the table says otherwise.`]
      : [`${indent}by ${rules.length === 1 ? 'rule' : 'rules'} ${from}`]),
    ...rules.flatMap((rule) => saidBy(file, table, rule).map((said) => `${indent}${said}`)),
  ];
}

function answerText(answer: Exclude<TableOutputs, null | readonly unknown[]>): string {
  return Object.entries(answer)
    .map(([name, value]) => `${name}: ${valueText(value)}`)
    .join(', ');
}

function valueText(value: unknown): string {
  if (value === null) return 'nothing (null)';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  return typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
}

/** What a rule says in words, where it does. */
function saidBy(file: TableFile, table: string, rule: string): string[] {
  if (file.kind === 'dmn') {
    const logic = file.file.decisions.find(({ name }) => name === table)?.logic;
    const said = logic?.kind === 'table' && logic.rules.find(({ id }) => id === rule)?.says;
    return said ? [said] : [];
  }
  const say =
    file.kind === 'entry' ? file.entry.data.rules.find(({ id }) => id === rule)?.say : file.read.says[rule];
  return say === undefined ? [] : [say];
}
