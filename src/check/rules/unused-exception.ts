import type { Entry, Finding } from '../../base/index.ts';
import { nearest } from '../../base/index.ts';
import { rulesOfExceptions } from '../exceptions.ts';
import type { Rule } from '../rule.ts';

export const unusedException: Rule = {
  id: 'unused-exception',
  title: 'Every exception sets a finding aside.',
  explanation:
    'An exception that no finding answers to is either misspelt or no longer needed. Left lying, it would one day set aside a mistake nobody has looked at. It names a rule and a file, and may name a text of the line; all three have to match. Files in exceptions/ and the rules about exceptions have no exceptions.',
  severity: 'error',
  aboutExceptions: true,
  examples: [
    {
      title: 'an exception that is no longer needed',
      file: 'exceptions/loud-update.yaml',
      good: '',
      bad: `rule: same-output
file: profiles/moorlight/rt-5561.yaml
reason: The update changed nothing but the number.
by: Bench lead
until: 2099-12-31
`,
      foundAt: 'same-output',
    },
  ],
  check: ({ exceptions, ruleIds }) =>
    (exceptions?.unused ?? []).map((exception) => unusedFinding(exception, ruleIds ?? [])),
};

function unusedFinding(exception: Entry<'exceptions'>, ruleIds: readonly string[]): Finding {
  const { rule, file, about } = exception.data;
  const finding = (field: 'rule' | 'file' | 'about', message: string, help: string): Finding => ({
    rule: 'unused-exception',
    severity: 'error',
    place: exception.place([field]),
    message,
    help,
    related: [],
  });
  if (!ruleIds.includes(rule)) {
    const guess = nearest(rule, ruleIds);
    return finding(
      'rule',
      `There is no rule “${rule}”.`,
      guess
        ? `Did you mean “${guess}”?`
        : 'Take the id from the finding, where it stands after the severity.',
    );
  }
  if (rulesOfExceptions.some((one) => one === rule) || file.startsWith('exceptions/')) {
    return finding('rule', 'No exception can be made to this.', 'Correct the entry it is about instead.');
  }
  if (about !== undefined) {
    return finding(
      'about',
      `No finding of “${rule}” in ${file} points at a line with “${about}”.`,
      'Copy a text from the line the finding points at; if nothing is wrong there any more, delete this file.',
    );
  }
  return finding(
    'rule',
    `There is no finding of “${rule}” in ${file} to set aside.`,
    'If it has been put right, delete this file; else look for a misspelt rule or file.',
  );
}
