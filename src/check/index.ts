/** The check: every rule over one content folder; findings in the order of files and lines. */
import { type Answers, readAnswers } from '../answers.ts';
import {
  type ContentFiles,
  compareFindings,
  type Finding,
  type Memory,
  noMemory,
  remembered,
} from '../base/index.ts';
import type { RuleInput } from './rule.ts';
import { rules } from './rules/index.ts';

export { countFindings, type FindingCounts, isFailing } from './counts.ts';
export { jsonReport } from './reporters/json.ts';
export { textReport } from './reporters/text.ts';
export type { Rule } from './rule.ts';
export { rules } from './rules/index.ts';

export interface CheckedAnswers {
  readonly answers: Answers;
  readonly findings: readonly Finding[];
}

/**
 * Reads a content folder, computes its answers and runs every rule over them.
 * @throws CannotRun where the folder cannot be read.
 */
export async function checkContent(
  content: string | ContentFiles,
  memory: Memory = noMemory,
): Promise<CheckedAnswers> {
  const { answers, findings } = await readAnswers(content, memory);
  return { answers, findings: checkAnswers(answers, findings, memory) };
}

/**
 * Runs every rule over answers that have been read already. A row of a sheet is named once, by the first
 * rule that finds fault with it: one slip would else be reported as each of its consequences.
 */
export function checkAnswers(
  answers: Answers,
  readerFindings: readonly Finding[],
  memory: Memory = noMemory,
): Finding[] {
  const remember: RuleInput['remember'] = (inputs, make) => remembered(memory, inputs, make);
  const namedRows = new Map<string, string>();
  return rules
    .flatMap((rule) => rule.check({ answers, readerFindings, remember }))
    .filter(({ rule, place }) => {
      if (!place.file.endsWith('.csv')) return true;
      const row = `${place.file}:${place.line}`;
      const first = namedRows.get(row) ?? rule;
      namedRows.set(row, first);
      return first === rule;
    })
    .sort(compareFindings);
}
