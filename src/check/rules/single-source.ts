import type { Answers } from '../../answers.ts';
import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { restsOnOneSource } from '../support.ts';

export const singleSource: Rule = {
  id: 'single-source',
  title: 'What is stated has been measured, or is stated by more than one source.',
  explanation:
    'A claim that no bench session measured, and that no second source bears out, is as good as the one source it comes from. Two sources that were taken from the same third one (restsOn) count as one, and a source that says something else does not bear it out. Such a claim is not wrong: it is marked “one source only” on the profile’s page and told here as news, which does not fail the check. A bench session that measures the profile, or a second source that says the same, removes it.',
  severity: 'note',
  examples: [
    {
      title: 'a figure from one bulletin, never measured',
      file: 'statements/bulletin-fellside.yaml',
      good: '',
      bad: 'source: maker-bulletin\nquote: Profile 310 gives 2 V.\nclaims:\n  - profile: fellside/310\n    trait: clean-volts\n    valueVolts: 2\n',
      foundAt: 'clean-volts',
    },
  ],
  check: ({ answers }) =>
    [...answers.base.statements.values()].flatMap((statement) => loneClaims(answers, statement)),
};

/** One finding for each profile of which the statement claims something nobody else says. */
function loneClaims(answers: Answers, statement: Entry<'statements'>): Finding[] {
  const { claims, source } = statement.data;
  const lone = new Map<string, number[]>();
  claims.forEach((claim, index) => {
    if (!answers.base.profiles.has(claim.profile) || !restsOnOneSource(answers, claim, source)) return;
    lone.set(claim.profile, [...(lone.get(claim.profile) ?? []), index]);
  });
  return [...lone].map(([profile, indexes]) => {
    const traits = [...new Set(indexes.flatMap((index) => claims[index]?.trait.replaceAll('-', ' ') ?? []))];
    return {
      rule: 'single-source',
      severity: 'note',
      place: statement.place(['claims', indexes[0] ?? 0, 'trait']),
      message: `Only “${source}” says this of “${profile}” (${traits.join(', ')}), and no bench session measured it.`,
      help: 'It is marked “one source only” on the profile’s page; have it measured, or add a second source that says so.',
      related: [],
    };
  });
}
