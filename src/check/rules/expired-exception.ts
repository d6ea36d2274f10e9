import type { Rule } from '../rule.ts';

export const expiredException: Rule = {
  id: 'expired-exception',
  title: 'No exception has outlived its last day.',
  explanation:
    'An exception sets a finding aside until a day, so that somebody looks at it again. When that day has passed, the finding is shown again and the exception is named: put right what it excused and delete it, or, where the reason still holds, give it a later day.',
  severity: 'error',
  aboutExceptions: true,
  examples: [
    {
      title: 'an exception that ran out years ago',
      file: 'exceptions/loft-scale.yaml',
      good: '',
      bad: `rule: sessions-disagree
file: outputs/2026-02-loft/readings.csv
reason: The meter of the loft is away for calibration.
by: Bench lead
until: 2020-06-30
`,
      foundAt: '2020-06-30',
    },
  ],
  check: ({ exceptions }) =>
    (exceptions?.expired ?? []).map((exception) => ({
      rule: 'expired-exception',
      severity: 'error',
      place: exception.place(['until']),
      message: `This exception held until ${exception.data.until}; it sets nothing aside any more.`,
      help: 'Put right what it excused and delete this file; or, if the reason still holds, give it a later day.',
      related: [],
    })),
};
