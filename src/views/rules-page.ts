/** The view model of the page that says what the check demands, and what has been set aside. */
import type { Answers } from '../answers.ts';
import { editsOf, rules } from '../check/index.ts';
import { phrase } from '../words/index.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import { longDate } from './wording.ts';

export interface RuleView {
  readonly id: string;
  readonly title: string;
  readonly explanation: string;
  /** What a finding of it does: “Stops the check”. */
  readonly weight: string;
  readonly examples: readonly {
    readonly title: string;
    readonly edits: readonly { readonly file: string; readonly bad: string; readonly good: string }[];
  }[];
}

export interface ExceptionView {
  readonly id: string;
  readonly rule: string;
  readonly file: string;
  readonly about: string;
  readonly reason: string;
  /** Who decided, and how long it holds. */
  readonly decided: string;
  readonly sources: readonly SourceLink[];
}

export interface RulesPageView {
  readonly rules: readonly RuleView[];
  readonly exceptions: readonly ExceptionView[];
}

const weights = {
  error: 'An error: the site is not published until it is put right.',
  warning: 'A warning: the site is not published until it is put right.',
  note: 'A note: it is told, and stops nothing.',
} as const;

export function rulesPage(answers: Answers): RulesPageView {
  return {
    rules: rules.map((rule) => ({
      id: rule.id,
      title: rule.title,
      explanation: rule.explanation,
      weight: weights[rule.severity],
      examples: rule.examples.map((example) => ({
        title: example.title,
        edits: editsOf(example).map(({ file, bad, good }) => ({
          file,
          bad: bad.trimEnd(),
          good: good.trimEnd(),
        })),
      })),
    })),
    exceptions: [...answers.base.exceptions.values()].map(({ id, data }) => ({
      id,
      rule: data.rule,
      file: data.file,
      about: data.about ?? '',
      reason: data.reason,
      decided: phrase('Decided by: {by}. It holds until {date}.', {
        by: data.by,
        date: longDate(data.until),
      }),
      sources: sourceLinks(answers, data.sources ?? []),
    })),
  };
}
