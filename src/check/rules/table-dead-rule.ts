import type { Finding, Place } from '../../base/index.ts';
import { gridOf, type HitPolicy } from '../../tables/index.ts';
import type { Rule } from '../rule.ts';
import { type AnalysedTable, analysedTables, deadAlone, ruleAt } from '../table-analysis.ts';

export const tableDeadRule: Rule = {
  id: 'table-dead-rule',
  title: 'Every rule of a decision table gives its answer in some case.',
  explanation:
    'A rule never comes to answer where others go before it in every case it holds for: earlier ones under the hit policy “first”, those whose answer stands higher in the list under “priority”. Most often a wide rule stands too far up. Nor does it where a test asks for a value its column cannot have.',
  severity: 'error',
  examples: [
    {
      title: 'a rule for the rest that stands too far up',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'when: { boost-goes: "fixed, fading, switched, changing" }\n    give: { answer: reflash }\n  - id: plain\n    when: {}',
      bad: 'when: {}\n    give: { answer: reflash }\n  - id: plain\n    when: { boost-goes: "none" }',
      foundAt: 'plain',
    },
    {
      title: 'a test that no value passes',
      file: 'tables/rear-speakers.yaml',
      good: '  - id: playing-far\n',
      bad: '  - id: playing-by-sea\n    when: { feet: "> 20" }\n    give: { from: rear, gauge: 10 }\n  - id: playing-far\n',
      foundAt: '"> 20"',
    },
  ],
  check: (input) => analysedTables(input).flatMap(deadFindings),
};

function deadFindings(analysed: AnalysedTable): Finding[] {
  const { entry, table, troubles } = analysed;
  const idPlace = (rule: string): Place => entry.place(['rules', ruleAt(table, rule), 'id']);
  const dead = deadAlone(troubles);
  // Where one rule is in the way of several, it is the one to move.
  const alike = Map.groupBy(dead, ({ why, by, rule }) => (why === 'empty' ? rule : by.join('\n')));
  return [...alike.values()].flatMap((group): Finding[] => {
    const [first] = group;
    if (!first) return [];
    const { rule, why, by } = first;
    if (why === 'empty') return [emptyFinding(analysed, ruleAt(table, rule))];
    const [single] = by;
    if (group.length > 1 && by.length === 1 && single !== undefined) {
      return [
        deadFinding(
          idPlace(single),
          `Because of the rule “${single}”, ${group.length} others never give their answer: it goes before them in every case they hold for.`,
          table.hitPolicy === 'first'
            ? 'Move it below them, or give it the test that is missing.'
            : 'Give it the test that is missing.',
          group.map((one) => ({ place: idPlace(one.rule), message: `“${one.rule}” comes too late.` })),
        ),
      ];
    }
    return group.map((one) =>
      deadFinding(
        idPlace(one.rule),
        `The rule “${one.rule}” never gives its answer: ${goesBefore(table.hitPolicy, by)} in every case it holds for.`,
        table.hitPolicy === 'first'
          ? 'Move it up, narrow the rules before it, or take it out.'
          : 'Narrow the rules that go before it, or take it out.',
        by.map((other) => ({ place: idPlace(other), message: `“${other}” goes before it.` })),
      ),
    );
  });
}

function deadFinding(place: Place, message: string, help: string, related: Finding['related'] = []): Finding {
  return { rule: 'table-dead-rule', severity: 'error', place, message, help, related };
}

function goesBefore(policy: HitPolicy, by: readonly string[]): string {
  const rules = by.map((one) => `“${one}”`);
  const last = rules.at(-1) ?? '';
  const names = rules.length === 1 ? last : `${rules.slice(0, -1).join(', ')} and ${last}`;
  const verb = rules.length === 1 ? 'stands' : 'stand';
  if (policy === 'first') return `${names} ${verb} above it and ${rules.length === 1 ? 'holds' : 'hold'}`;
  return rules.length === 1 ? `${names} goes before it` : `${names} go before it`;
}

/** At the test no value passes. */
function emptyFinding({ entry, table }: AnalysedTable, index: number): Finding {
  const { id = '' } = table.rules[index] ?? {};
  const input = gridOf(table).find(({ passes }) => !passes[index]?.includes(1))?.input;
  if (!input) throw new Error(`the rule ${id} is said to let nothing through, and does`);
  return deadFinding(
    entry.place(['rules', index, 'when', input.id]),
    `The rule “${id}” never holds: nothing that “${input.label}” can be passes this test.`,
    'Correct the test, or the least and most of the column.',
  );
}
