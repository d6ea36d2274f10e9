import type { Finding } from '../../base/index.ts';
import { decimalsFor, formatNumber } from '../../measure/index.ts';
import {
  lookAtMeasured,
  type MeasuredColumn,
  measuredColumns,
  thresholdText,
  unitOfColumn,
} from '../measured-columns.ts';
import type { Rule, RuleInput } from '../rule.ts';
import { type AnalysedTable, analysedTables, isSound } from '../table-analysis.ts';

/** A threshold this many times beyond all that was measured is most likely a decimal point out of place. */
const farTimes = 4;
/** Below the least value there may be good reason for a threshold, up to nearly a whole place of decimals. */
const nearTimes = 8;
/** Fewer profiles say little of what is usual. */
const leastProfiles = 3;

export const tableFarThreshold: Rule = {
  id: 'table-far-threshold',
  title: 'Thresholds of a measured column lie where profiles of the base come near them.',
  explanation: `A threshold that is more than ${farTimes} times the greatest value measured of any profile, or less than the least by ${nearTimes} times, parts nothing: all profiles lie on one side of it. Most often its decimal point is out of place, 42 for 4.2, or it is in another unit. Nothing is said where fewer than ${leastProfiles} profiles were measured, nor of columns the rider answers. If the threshold is meant for profiles still to come, set the finding aside with that reason.`,
  severity: 'warning',
  examples: [
    {
      title: 'a decimal point left out',
      file: 'tables/behind-an-amplifier.yaml',
      good: '"< 1"',
      bad: '"< 42"',
    },
  ],
  lookAt: lookAtMeasured,
  check: (input) => analysedTables(input).flatMap((one) => farFindings(input, one)),
};

function farFindings({ answers }: RuleInput, { entry, table, troubles }: AnalysedTable): Finding[] {
  if (!isSound(troubles)) return [];
  const columns = measuredColumns(answers, entry);
  const told = new Set<string>();
  return table.rules.flatMap(({ cells }, rule) =>
    table.inputs.flatMap(({ id, label, type }, index): Finding[] => {
      const column = columns.get(id);
      const thresholds = cells[index]?.set?.intervals.flatMap(({ low, high }) => [low, high]) ?? [];
      // An end the column has anyway parts nothing on purpose.
      const isInside = (one: number): boolean =>
        type.kind === 'number' && one > (type.least ?? Number.NEGATIVE_INFINITY);
      const far = column && thresholds.find((one) => isInside(one) && isFar(one, column));
      if (!column || far === undefined || told.has(`${id} ${far}`)) return [];
      told.add(`${id} ${far}`);
      const unit = unitOfColumn(entry.data.inputs[index]);
      const [least, most] = [column.least, column.most].map((value) =>
        formatNumber(value, decimalsFor(0, unit)),
      );
      return [
        {
          rule: 'table-far-threshold',
          severity: 'warning',
          place: entry.place(['rules', rule, 'when', id]),
          message: `No profile comes near ${thresholdText(far, unit)}: “${label}” of the ${column.profiles} profiles measured is ${least} to ${most}\u00a0${unit}.`,
          help: 'Check the decimal point and the unit.',
          related: [],
        },
      ];
    }),
  );
}

function isFar(threshold: number, { profiles, least, most }: MeasuredColumn): boolean {
  const size = Math.abs(threshold);
  if (profiles < leastProfiles || !Number.isFinite(size) || size === 0) return false;
  return size > farTimes * most || size * nearTimes < least;
}
