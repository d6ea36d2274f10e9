/** What has been proved of a table, or found, in sentences for those who rely on it. */
import { analyseTable, type HitPolicy, type Table } from '../tables/index.ts';

const agreement: Readonly<Record<HitPolicy, string>> = {
  unique: 'No case has two rules.',
  any: 'Where several rules fit, they give the same answer.',
  priority: 'No two rules contradict each other: the list of answers says which goes first.',
  first: 'No two rules contradict each other: the one that stands first decides.',
  'rule order': '',
  'output order': '',
  collect: '',
};

/** What the analysis of a table comes to; what was not proved is left out, what was found wrong is said. */
export function proofOf(table: Table): string[] {
  const { gaps, breakingCount, dead, beyond, cut } = analyseTable(table);
  if (beyond.length > 0) return ['Nothing is proved: the table has tests that are more than simple ones.'];
  const isWhole = (part: (typeof cut)[number]): boolean => !cut.includes(part);
  const proved: string[] = [];
  if (gaps.length > 0) proved.push('There are cases that no rule speaks of.');
  else if (isWhole('gaps')) proved.push('Complete: every combination has a rule.');
  if (breakingCount > 0) proved.push('There are rules that contradict each other.');
  else if (isWhole('overlaps')) proved.push(agreement[table.hitPolicy]);
  if (dead.length > 0) proved.push('There are rules that never decide.');
  else if (isWhole('dead')) proved.push('Every rule decides some case.');
  return proved.filter((sentence) => sentence !== '');
}
