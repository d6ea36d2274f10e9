import type { Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { type AnalysedTable, analysedTables, isSound } from '../table-analysis.ts';

export const tableIdleInput: Rule = {
  id: 'table-idle-input',
  title: 'Every input of a decision table makes a difference.',
  explanation:
    'An input that no rule tests, or that changes no answer whatever it is, asks riders a question for nothing. Most often a test was forgotten. Inputs whose rules differ only in what they say, or in the guides and profiles they point to, do make a difference. It is told once the table has no gaps, overlaps and dead rules, for those may be why.',
  severity: 'warning',
  examples: [
    {
      title: 'a question nothing depends on',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'when: { boost-goes: "fixed", equaliser: "yes" }',
      bad: 'when: { boost-goes: "fixed" }',
      foundIn: 'tables/behind-an-amplifier.yaml',
      foundAt: 'equaliser',
    },
  ],
  check: (input) => analysedTables(input).flatMap(idleFindings),
};

function idleFindings({ entry, table, troubles }: AnalysedTable): Finding[] {
  if (!isSound(troubles)) return [];
  return troubles.idle.flatMap(({ input, tested }): Finding[] => {
    const index = table.inputs.findIndex(({ id }) => id === input);
    return [
      {
        rule: 'table-idle-input',
        severity: 'warning',
        place: entry.place(['inputs', index, 'id']),
        message: tested
          ? `Whatever “${input}” is, the answer is the same.`
          : `No rule tests “${input}”, so it makes no difference.`,
        help: 'Add the test that is missing, or take the input out.',
        related: [],
      },
    ];
  });
}
