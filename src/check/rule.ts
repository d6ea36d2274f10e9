/** What a rule of the check is. One file a rule, in `rules/`. */
import type { Answers } from '../answers.ts';
import type { Finding } from '../base/index.ts';

export interface RuleInput {
  readonly answers: Answers;
  /** What the reader of the base found, for the rules about files and their shape. */
  readonly readerFindings: readonly Finding[];
}

export interface Rule {
  /** Lower-case words joined by hyphens; every finding of the rule bears it. */
  readonly id: string;
  /** The rule as one sentence that holds when nothing is wrong. */
  readonly title: string;
  /** One paragraph for contributors: what is checked, why, and what to do. */
  readonly explanation: string;
  readonly check: (input: RuleInput) => Finding[];
}

/** A rule whose findings the reader of the base has made already. */
export function readerRule(rule: Omit<Rule, 'check'>): Rule {
  return {
    ...rule,
    check: ({ readerFindings }) => readerFindings.filter((finding) => finding.rule === rule.id),
  };
}
