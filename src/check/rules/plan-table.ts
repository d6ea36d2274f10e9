import type { Entry, Finding } from '../../base/index.ts';
import { nearest } from '../../base/index.ts';
import { verdicts } from '../../decide/index.ts';
import type { Rule } from '../rule.ts';

export const planTable: Rule = {
  id: 'plan-table',
  title: 'One table decides plans at most, and its answers are verdicts.',
  explanation:
    'The planner’s verdicts are the answers of the table that says “decides: plan”. Of two such tables nobody could tell which decides. The table needs an output with the id “verdict” that holds a choice, and every answer on its list must be a verdict the planner knows: otherwise the program would go by a table of its own, and the shop’s policy would not count.',
  severity: 'error',
  examples: [
    {
      title: 'a verdict that is none',
      file: 'tables/plan-verdict.yaml',
      good: 'values: [reflash, keep]',
      bad: 'values: [reflash, keep, sell]',
      foundAt: 'sell',
      also: [
        {
          file: 'tables/plan-verdict.yaml',
          good: '  - id: else\n',
          bad: '  - id: far-too-quiet\n    when: { level-short: "> -1" }\n    give: { verdict: sell }\n  - id: else\n',
        },
      ],
    },
    {
      title: 'an output of another name',
      file: 'tables/plan-verdict.yaml',
      good: 'id: verdict\n    label: What to do\n    holds: choice\n    values: [reflash, keep]\nrules:\n  - id: quiet\n    when: { level-short: "> 0" }\n    give: { verdict: reflash }\n  - id: else\n    give: { verdict: keep }',
      bad: 'id: answer\n    label: What to do\n    holds: choice\n    values: [reflash, keep]\nrules:\n  - id: quiet\n    when: { level-short: "> 0" }\n    give: { answer: reflash }\n  - id: else\n    give: { answer: keep }',
      foundIn: 'tables/plan-verdict.yaml',
      foundAt: 'plan\ninputs',
    },
  ],
  check: ({ answers: { base } }) => {
    const deciding = [...base.tables.values()].filter(({ data }) => data.decides === 'plan');
    const [first] = deciding;
    return deciding.flatMap((entry) =>
      first && entry !== first ? [secondTable(entry, first)] : verdictFindings(entry),
    );
  },
};

function secondTable(entry: Entry<'tables'>, first: Entry<'tables'>): Finding {
  return {
    rule: 'plan-table',
    severity: 'error',
    place: entry.place(['decides']),
    message: 'Two tables decide plans, and nobody can tell which of them counts.',
    help: 'Leave “decides: plan” in one of them.',
    related: [{ place: first.place(['decides']), message: 'The other one.' }],
  };
}

function verdictFindings(entry: Entry<'tables'>): Finding[] {
  const all = verdicts.join(', ');
  const index = entry.data.outputs.findIndex(({ id, holds }) => id === 'verdict' && holds === 'choice');
  const output = entry.data.outputs[index];
  if (output?.holds !== 'choice') {
    return [
      {
        rule: 'plan-table',
        severity: 'error',
        place: entry.place(['decides']),
        message: 'This table is to decide plans, but has no output “verdict” that holds a choice.',
        help: `Give it one: “id: verdict”, “holds: choice”, with values out of: ${all}.`,
        related: [],
      },
    ];
  }
  return output.values.flatMap((value, at): Finding[] => {
    if (verdicts.some((known) => known === value)) return [];
    const guess = nearest(value, verdicts);
    return [
      {
        rule: 'plan-table',
        severity: 'error',
        place: entry.place(['outputs', index, 'values', at]),
        message: `“${value}” is no verdict.`,
        help: `${guess === undefined ? '' : `Did you mean “${guess}”? `}The verdicts are: ${all}.`,
        related: [],
      },
    ];
  });
}
