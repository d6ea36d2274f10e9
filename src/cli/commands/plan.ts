/** `readback plan CODE --unit FAMILY --amplifier CLASS …`: keep it, correct it, reflash it or replace it, and why? */
import type { PlanResult } from '../../../schemas/results/plan.ts';
import { type Answers, catalogueOf, readAnswers, reportPlan } from '../../answers.ts';
import { CannotRun, type Entry, nearest } from '../../base/index.ts';
import {
  type ArithmeticLine,
  type PlanQuery,
  type PlanReport,
  type QueryFault,
  queryFields,
  readQuery,
} from '../../decide/index.ts';
import type { Quantity } from '../../measure/index.ts';
import { cautionDeferral, cautionTexts } from '../../views/cautions.ts';
import { changesWords, filterSetting, lineWords, sectionTitle, stageWords } from '../../views/plan-words.ts';
import { outcomeLabel, topicLabel, verdictLabel } from '../../views/wording.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { profileWithCode } from '../profile-with-code.ts';
import { unitOf } from '../unit.ts';

export interface PlanOptions extends ContentOption, JsonOption {
  readonly unit: string;
  /** The fields of the plan, by the names of {@link queryFields}. */
  readonly [field: string]: string | boolean | undefined;
}

export async function plan(typed: string, options: PlanOptions, output: Output): Promise<number> {
  const { answers } = await readAnswers(options.content);
  const family = unitOf(answers.base, options.unit);
  const profile = profileWithCode(answers.base, family, typed, output);
  if (!profile) return exitCodes.findings;
  const fields = Object.fromEntries(
    queryFields.map((field) => {
      const given = options[field];
      return [field, typeof given === 'boolean' ? (given ? 'yes' : '') : given];
    }),
  );
  const catalogue = catalogueOf(answers);
  const { query, faults } = readQuery(fields, catalogue);
  const [fault] = faults;
  if (fault) throw new CannotRun(`--${fault.field}: ${fault.message}`, helpFor(fault, fields, answers));
  const report = reportPlan(answers, profile.id, query);
  if (!report) throw new CannotRun(`“${profile.id}” has no family that can be read.`, 'Run readback check.');
  if (options.json) printJson(output, planResult(answers, profile, report));
  else printReport(answers, profile, family, query, report, output);
  return exitCodes.ok;
}

function helpFor(
  { field, help }: QueryFault,
  fields: Readonly<Record<string, string | undefined>>,
  answers: Answers,
): string {
  const guess = nearest(fields[field] ?? '', answers.base.equipment.keys());
  return guess ? `Did you mean “${guess}”? ${help}` : help;
}

export function planResult(answers: Answers, profile: Entry<'profiles'>, report: PlanReport): PlanResult {
  const { answer, rules, settledBy, suits, changes, staged, sections } = report;
  return {
    profile: profile.id,
    family: profile.data.family,
    code: profile.data.code,
    verdict: answer.verdict,
    possible: [...answer.possible],
    sentence: answer.sentence,
    reasons: answer.reasons.map((reason) => ({ ...reason, readings: [...reason.readings] })),
    rules: [...rules],
    settledBy: [...settledBy],
    suits: suits.map(({ id, verdict }) => ({ profile: id, code: codeOf(answers, id), verdict })),
    changes: changes.map(({ changes: made, verdict }) => ({
      changes: made.map((one) => ({ change: one.change, to: 'to' in one ? idOf(one.to) : null })),
      verdict,
    })),
    stages: (staged?.stages ?? []).map((stage) => ({ ...stage })),
    sections: sections.map(({ id, lines, remarks, correction }) => ({
      id,
      lines: lines.map(published),
      remarks: [...remarks],
      ...(correction ? { filters: correction.filters.map((filter) => ({ ...filter })) } : {}),
    })),
  };
}

function published(line: ArithmeticLine): PlanResult['sections'][number]['lines'][number] {
  return {
    id: line.id,
    title: line.title,
    symbol: line.symbol,
    formula: line.formula,
    given: line.given.map(({ symbol, name, quantity }) => ({ symbol, name, ...publishedValue(quantity) })),
    result: publishedValue(line.result),
    note: line.note,
    commonPractice: line.commonPractice,
    cautions: cautionTexts(line.cautions).map(({ title, text }) => `${title} ${text}`),
    readings: [...line.readings],
    sources: [...line.sources],
  };
}

function publishedValue({
  value,
  unit,
  expandedUncertainty,
  bound,
}: Quantity): PlanResult['sections'][number]['lines'][number]['result'] {
  return { value, unit, expandedUncertainty, bound };
}

function idOf(to: string | { readonly id: string }): string {
  return typeof to === 'string' ? to : to.id;
}

function codeOf(answers: Answers, profile: string): string {
  return answers.base.profiles.get(profile)?.data.code ?? profile;
}

function printReport(
  answers: Answers,
  profile: Entry<'profiles'>,
  family: Entry<'families'>,
  query: PlanQuery,
  report: PlanReport,
  output: Output,
): void {
  const { answer, suits, changes, staged, sections } = report;
  const names = { code: (id: string) => codeOf(answers, id) };
  output.out(`${profile.data.code}  ${family.data.name}`);
  output.out(`${verdictLabel(answer.verdict)}. ${answer.sentence}`);
  output.out('');
  for (const { topic, outcome, text } of answer.reasons) {
    output.out(`  ${topicLabel(topic).padEnd(8)} ${outcomeLabel(outcome).padEnd(16)} ${text}`);
  }
  const list = (title: string, lines: readonly string[]): void => {
    if (lines.length === 0) return;
    output.out(`\n${title}`);
    for (const line of lines) output.out(`  ${line}`);
  };
  const helps = changes.map(
    ({ changes: made, verdict }) => `${changesWords(made, names)}: ${verdictLabel(verdict)}`,
  );
  list('What would make it work', helps);
  const suiting = suits.map(({ id, verdict }) => `${codeOf(answers, id)}: ${verdictLabel(verdict)}`);
  if (helps.length === 0) list('Other profiles of this unit that suit', suiting);
  const stages = (staged?.stages ?? []).map(
    (stage) => `${stageWords(stage, query)}: ${verdictLabel(stage.verdict)}`,
  );
  list('In which order to buy', stages);
  for (const { id, lines, remarks, correction } of sections) {
    const filters = (correction?.filters ?? []).map(filterSetting);
    list(sectionTitle(id), [...lines.map(lineWords), ...filters, ...remarks]);
  }
  const cautions = cautionTexts(sections.flatMap(({ lines }) => lines.flatMap((line) => line.cautions)));
  if (cautions.length === 0) return;
  output.out('');
  for (const { title, text } of cautions) output.out(`! ${title} ${text}`);
  output.out(`! ${cautionDeferral()}`);
}
