/** The check: every rule over one content folder; findings in the order of files and lines. */
import { type Answers, readAnswers } from '../answers.ts';
import { type ContentFiles, compareFindings, type Finding } from '../base/index.ts';
import { withoutReadings } from './claims.ts';
import type { Rule, RuleFinding, RuleInput } from './rule.ts';
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
export async function checkContent(content: string | ContentFiles): Promise<CheckedAnswers> {
  const { answers, findings } = await readAnswers(content);
  return { answers, findings: checkAnswers(answers, findings) };
}

/**
 * Runs every rule over answers that have been read already. A row of a sheet is named once, by the first
 * rule that finds fault with it, and readings a rule has claimed are not shown to those after it: one slip
 * would else be reported as each of its consequences.
 */
export function checkAnswers(answers: Answers, readerFindings: readonly Finding[]): Finding[] {
  const namedRows = new Map<string, string>();
  const claimed = new Set<string>();
  const findings: Finding[] = [];
  let unclaimed = answers;
  for (const rule of rules) {
    const before = claimed.size;
    const found = findingsOf(rule, { answers, readerFindings }, unclaimed);
    for (const { claims = [], ...finding } of found) {
      if (!isNamed(finding, namedRows)) findings.push(finding);
      for (const id of claims) claimed.add(id);
    }
    if (claimed.size > before) unclaimed = withoutReadings(answers, claimed);
  }
  return findings.sort(compareFindings);
}

/**
 * What a rule finds once the claimed readings are out of its sight. Their absence is no fault, though: what
 * it finds only without them does not count.
 */
function findingsOf(rule: Rule, input: RuleInput, unclaimed: Answers): RuleFinding[] {
  const found = rule.check(input);
  if (!rule.judgesReadings || unclaimed === input.answers || found.length === 0) return found;
  const files = new Set(found.map(({ place }) => place.file));
  return rule.check({ ...input, answers: unclaimed }).filter(({ place }) => files.has(place.file));
}

/** Whether a finding is about a row of a sheet that another rule has named. */
function isNamed({ rule, place }: Finding, namedRows: Map<string, string>): boolean {
  if (!place.file.endsWith('.csv')) return false;
  const row = `${place.file}:${place.line}`;
  const first = namedRows.get(row) ?? rule;
  namedRows.set(row, first);
  return first !== rule;
}
