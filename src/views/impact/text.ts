/** What a change does to the answers, as text for a terminal. */
import { printable } from '../../check/reporters/printable.ts';
import { type ImpactInput, impactReport } from './report.ts';
import type { Piece } from './report-parts.ts';

export function impactText(input: ImpactInput): string {
  const { summary, grid, sections } = impactReport(input);
  const text = (pieces: readonly Piece[]): string =>
    printable(pieces.map((one) => (typeof one === 'string' ? one : one.code)).join(''));
  return [
    printable(summary),
    ...(grid === '' ? [] : [grid]),
    ...sections.flatMap(({ title, items }) => [
      '',
      title,
      ...items.flatMap((item) => [`  ${text(item.title)}`, ...item.lines.map((line) => `    ${text(line)}`)]),
    ]),
  ].join('\n');
}
