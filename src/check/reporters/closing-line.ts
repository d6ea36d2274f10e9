/** The last line of a report: how many findings there are, and how many are left out and why. */
import { counted } from '../../words/index.ts';
import { countFindings } from '../counts.ts';
import type { Report } from './report.ts';

export function closingLine({ findings, setAside, since }: Report): string {
  const { error, warning, note } = countFindings(findings);
  const parts = [
    error > 0 ? counted(error, 'error') : '',
    warning > 0 ? counted(warning, 'warning') : '',
    note > 0 ? counted(note, 'note') : '',
  ].filter((part) => part !== '');
  const files = counted(new Set(findings.map((one) => one.place.file)).size, 'file');
  const sinceWhen = since ? ` since ${since.revision}` : '';
  const found =
    error + warning === 0
      ? `${since ? `Nothing new is contradictory or unsourced${sinceWhen}` : 'No contradictions, nothing unsourced'}${note > 0 ? ` (${counted(note, 'note')})` : ''}.`
      : `${parts.join(', ')} in ${files}${sinceWhen}.`;
  return [
    found,
    ...(since && since.older > 0 ? [`${counted(since.older, 'older finding')} left out.`] : []),
    ...(setAside > 0
      ? [`${counted(setAside, 'finding')} set aside by ${setAside === 1 ? 'an exception' : 'exceptions'}.`]
      : []),
  ].join(' ');
}
