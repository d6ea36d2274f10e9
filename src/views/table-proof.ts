/** What has been proved of a table, or found, in sentences for those who rely on it. */
import { analyseTable, type HitPolicy, type Table } from '../tables/index.ts';
import { phrase } from '../words/index.ts';

function agreementOf(hit: HitPolicy): string {
  switch (hit) {
    case 'unique':
      return phrase('No case has two rules.');
    case 'any':
      return phrase('Where several rules fit, they give the same answer.');
    case 'priority':
      return phrase('No two rules contradict each other: the list of answers says which goes first.');
    case 'first':
      return phrase('No two rules contradict each other: the one that stands first decides.');
    default:
      return '';
  }
}

/** What the analysis of a table comes to; what was not proved is left out, what was found wrong is said. */
export function proofOf(table: Table): string[] {
  const { gaps, breakingCount, dead, beyond, cut } = analyseTable(table);
  if (beyond.length > 0)
    return [phrase('Nothing is proved: the table has tests that are more than simple ones.')];
  const isWhole = (part: (typeof cut)[number]): boolean => !cut.includes(part);
  const proved: string[] = [];
  if (gaps.length > 0) proved.push(phrase('There are cases that no rule speaks of.'));
  else if (isWhole('gaps')) proved.push(phrase('Complete: every combination has a rule.'));
  if (breakingCount > 0) proved.push(phrase('There are rules that contradict each other.'));
  else if (isWhole('overlaps')) proved.push(agreementOf(table.hitPolicy));
  if (dead.length > 0) proved.push(phrase('There are rules that never decide.'));
  else if (isWhole('dead')) proved.push(phrase('Every rule decides some case.'));
  return proved.filter((sentence) => sentence !== '');
}
