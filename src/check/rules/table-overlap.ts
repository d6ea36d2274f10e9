import type { Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { type AnalysedTable, analysedTables, exampleWords, ruleAt } from '../table-analysis.ts';

export const tableOverlap: Rule = {
  id: 'table-overlap',
  title: 'No two rules of a decision table hold together where its hit policy forbids it.',
  explanation:
    'Under the hit policy “unique” at most one rule may hold in any case; under “any”, rules that hold together give the same answer; under “priority”, one of the answers goes first. Otherwise a rider who falls into both gets no answer. All combinations of values are looked at, not samples. The finding stands at the rule that overlaps most, or at the later of two, and names the other; where half the table overlaps, it stands at the hit policy, which then is most often the mistake. What may come with such an overlap, a case left open beside it or a rule that nothing is left for, is told with it or once it is mended.',
  severity: 'error',
  examples: [
    {
      title: 'a threshold that two rules claim',
      file: 'tables/rear-speakers.yaml',
      good: 'id: playing-far\n    when: { rear: "playing", feet: "> 10" }',
      bad: 'id: playing-far\n    when: { rear: "playing", feet: ">= 10" }',
      foundAt: 'playing-far',
    },
    {
      title: 'a test left out',
      file: 'tables/rear-speakers.yaml',
      good: 'id: playing\n    when: { rear: "playing", feet: "<= 10" }',
      bad: 'id: playing\n    when: { feet: "<= 10" }',
      foundIn: 'tables/rear-speakers.yaml',
      foundAt: 'not-playing\n',
    },
    {
      title: 'another hit policy',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'hit: first',
      bad: 'hit: unique',
      foundAt: 'unique',
    },
  ],
  check: (input) => analysedTables(input).flatMap(overlapFindings),
};

type Pair = AnalysedTable['troubles']['overlaps'][number];

function overlapFindings(analysed: AnalysedTable): Finding[] {
  const { table, troubles } = analysed;
  const groups = groupsOf(analysed, troubles.overlaps);
  const isMost = groups.length > Math.max(2, table.rules.length / 2 - 1);
  if (isMost || troubles.overlapCount > troubles.overlaps.length) return [atHitPolicy(analysed)];
  return groups.map(([rule, pairs], index) => overlapFinding(analysed, rule, pairs, index === 0));
}

/** The rule that overlaps most with its pairs, then the next of what is left; of two the later one. */
function groupsOf({ table }: AnalysedTable, overlaps: readonly Pair[]): [rule: string, pairs: Pair[]][] {
  const groups: [string, Pair[]][] = [];
  let left = overlaps;
  while (left.length > 0) {
    const counts = new Map<string, number>();
    for (const rule of left.flatMap(({ rules }) => rules)) counts.set(rule, (counts.get(rule) ?? 0) + 1);
    const [most] = [...counts].sort(
      ([a, times], [b, others]) => others - times || ruleAt(table, b) - ruleAt(table, a),
    );
    if (!most) break;
    const has = ({ rules }: Pair): boolean => rules.includes(most[0]);
    groups.push([most[0], left.filter(has)]);
    left = left.filter((pair) => !has(pair));
  }
  return groups;
}

function overlapFinding(
  { entry, table, troubles }: AnalysedTable,
  rule: string,
  pairs: readonly Pair[],
  isFirst: boolean,
): Finding {
  const others = pairs.map(({ rules }) => rules.find((one) => one !== rule) ?? '');
  const [pair] = pairs;
  const more = others.length === 1 ? '' : `, and with ${others.length - 1} more`;
  const where = pair ? `${pair.words}. For example: ${exampleWords(table, pair)}` : '';
  const rest = isFirst ? troubles.gaps.slice(0, 1) : [];
  return {
    rule: 'table-overlap',
    severity: 'error',
    place: entry.place(['rules', ruleAt(table, rule), 'id']),
    message: `The rule “${rule}” holds together with “${others[0]}”${more}, for this: ${where}. ${why(table.hitPolicy, pair?.contradicts ?? false)}`,
    help: `Narrow a test of one of them${isFirst ? ', or, if the first that holds is meant to answer, write hit: first' : ''}.`,
    related: [
      ...others.map((other) => ({
        place: entry.place(['rules', ruleAt(table, other), 'id']),
        message: `“${other}” holds there too.`,
      })),
      ...rest.map((gap) => ({
        place: entry.place(['rules'], 'key'),
        message: `And no rule holds for this: ${gap.words}.`,
      })),
    ],
  };
}

function why(policy: string, contradicts: boolean): string {
  if (policy === 'unique') {
    return contradicts
      ? 'They give different answers, and the hit policy “unique” lets one rule hold only.'
      : 'The hit policy “unique” lets one rule hold only.';
  }
  return policy === 'any'
    ? 'They give different answers, and the hit policy “any” wants the same.'
    : 'They give different answers, and none of the two goes first.';
}

function atHitPolicy({ entry, table, troubles: { overlaps, overlapCount } }: AnalysedTable): Finding {
  const [pair] = overlaps;
  const [one = '', other = ''] = pair?.rules ?? [];
  return {
    rule: 'table-overlap',
    severity: 'error',
    place: entry.place(['hit']),
    message: `The hit policy is “${table.hitPolicy}”, but ${overlapCount} pairs of rules hold together, such as “${one}” and “${other}” for this: ${pair?.words ?? ''}.`,
    help: 'If the first rule that holds is meant to answer, write hit: first; else narrow the tests until one holds in each case.',
    related: overlaps.slice(0, 3).map(({ rules }) => ({
      place: entry.place(['rules', ruleAt(table, rules[1]), 'id']),
      message: `“${rules[1]}” holds together with “${rules[0]}”.`,
    })),
  };
}
