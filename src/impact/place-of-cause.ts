/** Where in the content the change stands that an answer became another by. */
import type { DataPath, Place } from '../base/index.ts';
import type { Cause } from './causes.ts';
import { decisiveChanges } from './decisive.ts';
import { rowsBehind, type SheetChanges } from './sheet-changes.ts';
import type { EntryPair, States } from './states.ts';

/**
 * The changed field, as near as can be told: of a table, in a rule that decided or does now; of a session, a field of
 * its conditions, or the first row of the profile that differs. Of what was removed, the beginning of its file.
 */
export function placeOfCause(states: States, sheets: SheetChanges, cause: Cause, profile: string): Place {
  const pair: EntryPair = states.pair(cause.kind, cause.id);
  const { before, now } = pair;
  if (!now) return beginningOf(before?.file ?? '');
  const paths = decisiveChanges(pair);
  const [first] = paths;
  if (first) return now.place(ofDecidingRule(states, cause, paths) ?? first);
  const sheet = cause.kind === 'outputs' ? states.now.base.readings.get(cause.id) : undefined;
  if (!sheet) return now.place();
  const { added, changed } = rowsBehind(states, sheets, cause.id, profile);
  const row = changed[0] ?? added[0];
  return row === undefined ? beginningOf(sheet.source.file) : sheet.place(row, 'voltsRms');
}

function ofDecidingRule(
  states: States,
  { kind, id, rules }: Cause,
  paths: readonly DataPath[],
): DataPath | undefined {
  const written = kind === 'tables' ? states.now.base.tables.get(id)?.data.rules : undefined;
  return paths.find(([list, at]) => {
    const rule = list === 'rules' && typeof at === 'number' ? written?.[at] : undefined;
    return rule !== undefined && rules?.includes(rule.id);
  });
}

function beginningOf(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}
