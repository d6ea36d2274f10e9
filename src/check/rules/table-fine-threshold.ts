import type { Unit } from '../../../schemas/index.ts';
import type { Finding } from '../../base/index.ts';
import { formatQuantity } from '../../measure/index.ts';
import { fineThresholds } from '../../tables/index.ts';
import { lookAtMeasured, measuredColumns, thresholdText, unitOfColumn } from '../measured-columns.ts';
import type { Rule, RuleInput } from '../rule.ts';
import { type AnalysedTable, analysedTables, isSound, ruleAt } from '../table-analysis.ts';

export const tableFineThreshold: Rule = {
  id: 'table-fine-threshold',
  title: 'Thresholds of a measured column are further apart than the values are known.',
  explanation:
    'A value from the bench lies within its uncertainty U. Where two thresholds are closer together than U, or a rule asks for exactly one value, chance decides which rule holds. U is that of a middling profile: the median of the expanded uncertainties (about 95 %) over all profiles of the base in which the value was measured. Columns the rider answers have none.',
  severity: 'error',
  examples: [
    {
      title: 'a rule finer than the meter',
      file: 'tables/behind-an-amplifier.yaml',
      good: '  - id: boost-fixed\n',
      bad: '  - id: hardly-quiet\n    when: { clean-volts: "[1..1.01)" }\n    give: { answer: correct }\n  - id: boost-fixed\n',
      foundAt: '"[1..1.01)"',
    },
    {
      title: 'exactly one value of a measured quantity',
      file: 'tables/behind-an-amplifier.yaml',
      good: '  - id: boost-fixed\n',
      bad: '  - id: hardly-quiet\n    when: { clean-volts: "3.5" }\n    give: { answer: correct }\n  - id: boost-fixed\n',
      foundAt: '"3.5"',
    },
  ],
  lookAt: lookAtMeasured,
  check: (input) => analysedTables(input).flatMap((one) => fineFindings(input, one)),
};

function fineFindings({ answers }: RuleInput, { entry, table, troubles }: AnalysedTable): Finding[] {
  if (!isSound(troubles)) return [];
  const typical = measuredColumns(answers, entry);
  const limits = Object.fromEntries(
    [...typical].map(([id, { typicalUncertainty }]) => [id, typicalUncertainty]),
  );
  return fineThresholds(table, limits).map(({ input, low, high, uncertainty, rules }) => {
    const unit = unitOfColumn(entry.data.inputs.find(({ id }) => id === input));
    const label = table.inputs.find(({ id }) => id === input)?.label ?? input;
    const number = typical.get(input)?.profiles ?? 0;
    const u = formatUncertainty(uncertainty, unit);
    // The rule that has both ends, or else the later one: it is what was split off.
    const at = rules.length === 1 ? rules[0] : (bothEnds(table, input, low, high, rules) ?? rules.at(-1));
    const others = rules.filter((one) => one !== at);
    const known = `“${label}” is known to ${u} (U, the median of ${number} ${number === 1 ? 'profile' : 'profiles'})`;
    return {
      rule: 'table-fine-threshold',
      severity: 'error',
      place: entry.place(['rules', ruleAt(table, at ?? ''), 'when', input]),
      message:
        low === high
          ? `The rule “${at}” asks for exactly ${thresholdText(low, unit)}, but ${known}.`
          : `The thresholds ${thresholdText(low, unit)} and ${thresholdText(high, unit)} are closer together than ${known}.`,
      help:
        low === high
          ? 'Ask for a range that is wider than that.'
          : 'Move them further apart, or make one threshold of the two.',
      related: others.map((other) => ({
        place: entry.place(['rules', ruleAt(table, other), 'when', input]),
        message: `A threshold of “${other}”.`,
      })),
    };
  });
}

/** The rule whose test of the input has both ends. */
function bothEnds(
  { inputs, rules }: AnalysedTable['table'],
  input: string,
  low: number,
  high: number,
  ids: readonly string[],
): string | undefined {
  const column = inputs.findIndex(({ id }) => id === input);
  return rules.find(
    ({ id, cells }) =>
      ids.includes(id) &&
      cells[column]?.set?.intervals.some((interval) => interval.low === low && interval.high === high),
  )?.id;
}

/** `± 0.05 V`, rounded up as everywhere. */
function formatUncertainty(expandedUncertainty: number, unit: Unit): string {
  const text = formatQuantity({
    value: 0,
    unit,
    standardUncertainty: expandedUncertainty / 2,
    coverageFactor: 2,
    expandedUncertainty,
    bound: 'exact',
    budget: [],
  });
  return text.slice(text.indexOf('±'));
}
