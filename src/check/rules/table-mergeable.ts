import type { Finding } from '../../base/index.ts';
import { type Mergeable, writtenTest } from '../../tables/index.ts';
import type { Rule } from '../rule.ts';
import { type AnalysedTable, analysedTables, isSound, ruleAt } from '../table-analysis.ts';

export const tableMergeable: Rule = {
  id: 'table-mergeable',
  title: 'Rules of a decision table that answer alike are one rule.',
  explanation:
    'Two rules that give the same answer in the same words and differ in the test of one column only can be one, and a short table is easier to keep right. This is news and does not fail the check; rules with different words for the rider, guides, profiles or sources are left alone, and so is a table with gaps, overlaps or dead rules.',
  severity: 'note',
  examples: [
    {
      title: 'two rules for one answer',
      file: 'tables/behind-an-amplifier.yaml',
      good: '  - id: boost-left\n    when: { boost-goes: "fixed, fading, switched, changing" }\n',
      bad: '  - id: boost-moves\n    when: { boost-goes: "fading, switched, changing" }\n    give: { answer: reflash }\n  - id: boost-left\n    when: { boost-goes: "fixed" }\n',
      foundAt: 'boost-left',
    },
  ],
  check: (input) => analysedTables(input).flatMap(mergeableFindings),
};

function mergeableFindings(analysed: AnalysedTable): Finding[] {
  const { entry, table, troubles } = analysed;
  if (!isSound(troubles)) return [];
  return troubles.mergeable
    .filter((one) => sayTheSame(analysed, one))
    .map(({ rules, at, input, test }) => {
      const type = table.inputs.find(({ id }) => id === input)?.type ?? { kind: 'text' };
      const written = writtenTest(test, type);
      const merged = written === '-' ? `leave “${input}” out` : `write ${input}: "${written}"`;
      const others = rules.filter((one) => one !== at);
      const [point = at] = others;
      return {
        rule: 'table-mergeable',
        severity: 'note',
        place: entry.place(['rules', ruleAt(table, point), 'id']),
        message: `The rules “${rules.join('”, “')}” give the same answer and differ in “${input}” only.`,
        help: `One rule can do: in “${at}” ${merged}, and take out “${others.join('”, “')}”.`,
        related: [{ place: entry.place(['rules', ruleAt(table, at), 'id']), message: 'Where it can stand.' }],
      };
    });
}

function sayTheSame({ entry, table }: AnalysedTable, { rules }: Mergeable): boolean {
  const said = rules.map((rule) => {
    const { say, guides, profiles, sources } = entry.data.rules[ruleAt(table, rule)] ?? {};
    return JSON.stringify([say, guides, profiles, sources]);
  });
  return new Set(said).size === 1;
}
