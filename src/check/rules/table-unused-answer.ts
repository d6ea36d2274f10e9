import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const tableUnusedAnswer: Rule = {
  id: 'table-unused-answer',
  title: 'Every answer on the list of a decision table is given by a rule.',
  explanation:
    'An answer that no rule gives, and that is not the one for the rest (otherwise), may be left from an earlier state of the table, or belong to a rule that is still missing. It misleads nobody, so this is news and does not fail the check.',
  severity: 'note',
  examples: [
    {
      title: 'an answer nobody gets',
      file: 'tables/rear-speakers.yaml',
      good: 'values: [front, rear]',
      bad: 'values: [front, rear, neither]',
      foundAt: 'neither',
    },
  ],
  check: ({ answers: { base, tables } }) =>
    [...tables].flatMap(([id, { table }]) => {
      const entry = base.tables.get(id);
      return entry && table ? unusedAnswers(entry) : [];
    }),
};

function unusedAnswers(entry: Entry<'tables'>): Finding[] {
  return entry.data.outputs.flatMap((output, index) => {
    if (output.holds !== 'choice') return [];
    const given = new Set(entry.data.rules.map(({ give }) => give[output.id]).concat(output.otherwise ?? []));
    return output.values.flatMap((value, at): Finding[] =>
      given.has(value)
        ? []
        : [
            {
              rule: 'table-unused-answer',
              severity: 'note',
              place: entry.place(['outputs', index, 'values', at]),
              message: `No rule of this table gives the answer “${value}”.`,
              help: 'Add the rule that is missing, or take the answer out.',
              related: [],
            },
          ],
    );
  });
}
