import type { Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { type AnalysedTable, analysedTables, exampleWords, mostGaps } from '../table-analysis.ts';

export const tableGap: Rule = {
  id: 'table-gap',
  title: 'In every case a rule of a decision table holds.',
  explanation:
    'A rider whose case no rule holds for gets no answer. All combinations of values are looked at, not samples, and what is missing is said in as few cases as possible, each with an example. A last rule without tests (when: {}) or an “otherwise” at every output answers what is left. Under the hit policies “collect”, “rule order” and “output order” no answer is an answer too, and nothing is said. Where rules overlap against the hit policy, a case left open is told with the overlap. A table with so many combinations that not all could be looked at is told as news.',
  severity: 'error',
  examples: [
    {
      title: 'a threshold that belongs to neither rule',
      file: 'tables/rear-speakers.yaml',
      good: 'id: playing\n    when: { rear: "playing", feet: "<= 10" }',
      bad: 'id: playing\n    when: { rear: "playing", feet: "< 10" }',
      foundIn: 'tables/rear-speakers.yaml',
      foundAt: 'rules:',
    },
    {
      title: 'no rule for the rest',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'id: plain\n    when: {}',
      bad: 'id: plain\n    when: { equaliser: "no" }',
      foundIn: 'tables/behind-an-amplifier.yaml',
      foundAt: 'rules:',
    },
  ],
  check: (input) => analysedTables(input).flatMap((one) => [...gapFindings(one), ...unproved(one)]),
};

function gapFindings({ entry, table, troubles: { gaps, overlaps } }: AnalysedTable): Finding[] {
  const [first, ...others] = gaps;
  if (overlaps.length > 0 || !first) return [];
  const count = gaps.length < mostGaps ? `${others.length}` : `at least ${others.length}`;
  const more =
    others.length === 0 ? '' : ` So it is in ${count} more ${others.length === 1 ? 'case' : 'cases'}.`;
  const place = entry.place(['rules'], 'key');
  return [
    {
      rule: 'table-gap',
      severity: 'error',
      place,
      message: `No rule holds for this: ${first.words}. For example: ${exampleWords(table, first)}.${more}`,
      help:
        first.notKnown === 'only'
          ? 'Add a rule with the test "null" for what is not known, or take “mayBeMissing” away: what is not known may then be anything.'
          : 'Add a rule for it, or widen a test of a rule beside it; if the rest has one answer, let the last rule have no tests.',
      related: others.map(({ words }) => ({ place, message: `Nor for this: ${words}.` })),
    },
  ];
}

function unproved({ entry, troubles }: AnalysedTable): Finding[] {
  const words: Readonly<Record<string, string>> = {
    gaps: 'open cases',
    overlaps: 'overlaps',
    dead: 'dead rules',
    idle: 'idle inputs',
  };
  const parts = troubles.unproved.flatMap((part) => words[part] ?? []);
  if (parts.length === 0) return [];
  return [
    {
      rule: 'table-gap',
      severity: 'note',
      place: entry.place(['rules'], 'key'),
      message: `This table has more combinations of tests than can be looked at; there may be more ${parts.join(', ')} than are told.`,
      help: 'Make two tables of it, or test fewer columns.',
      related: [],
    },
  ];
}
