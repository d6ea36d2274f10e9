/** Findings as text for a terminal: file by file, each with its line and what to do next, and a closing line. */
import { styleText } from 'node:util';
import type { Finding, Place } from '../../base/index.ts';
import { closingLine } from './closing-line.ts';
import { codeFrame } from './code-frame.ts';
import { printable, widthOf } from './printable.ts';
import { pathOf, type Report } from './report.ts';

type Style = Parameters<typeof styleText>[0];

const styles = { error: 'red', warning: 'yellow', note: 'cyan' } as const;

/** @param colour colour the text for a terminal. */
export function textReport(report: Report, colour: boolean): string {
  const paint = (style: Style, text: string): string =>
    colour ? styleText(style, text, { validateStream: false }) : text;
  const at = (place: Place): string =>
    printable(`${pathOf(report, place.file)}:${place.line}:${place.column}`);
  const lines = report.findings.flatMap((finding, index) => {
    const { place, severity, rule, message, help, related } = finding;
    const before = report.findings[index - 1];
    return [
      ...(before ? [''] : []),
      ...(before && before.place.file !== place.file ? [paint('dim', '─'.repeat(40))] : []),
      `${paint('bold', at(place))}  ${paint(styles[severity], severity)}  ${paint('dim', rule)}`,
      `  ${printable(message)}`,
      ...frameLines(report, finding, paint),
      `  → ${printable(help)}`,
      ...related.map((one) => paint('dim', `    ${at(one.place)}  ${printable(one.message)}`)),
    ];
  });
  return [
    ...lines,
    ...(lines.length > 0 ? ['', paint('dim', 'readback check --explain RULE says more about a rule.')] : []),
    closingLine(report),
  ].join('\n');
}

function frameLines(
  report: Report,
  { place, severity }: Finding,
  paint: (style: Style, text: string) => string,
): string[] {
  const frame = codeFrame(report.sourceOf, place);
  if (!frame) return [];
  const number = String(frame.line);
  const carets = '^'.repeat(Math.max(1, widthOf(frame.marked)));
  return [
    `${paint('dim', `    ${number} │`)} ${frame.before}${frame.marked}${frame.after}`.trimEnd(),
    `${paint('dim', `    ${' '.repeat(number.length)} │`)} ${' '.repeat(widthOf(frame.before))}${paint(styles[severity], carets)}`,
  ];
}
