/**
 * Findings as workflow commands, which GitHub shows beside the lines of a pull request:
 * `::error file=…,line=…,endLine=…,col=…,endColumn=…,title=…::message`
 * (GitHub documentation, “Workflow commands for GitHub Actions”). GitHub shows ten of each kind a step beside
 * the lines; all of them stand in the log.
 */
import type { Finding } from '../../base/index.ts';
import { closingLine } from './closing-line.ts';
import { printable } from './printable.ts';
import { pathOf, type Report } from './report.ts';

const commands = { error: 'error', warning: 'warning', note: 'notice' } as const;

export function githubReport(report: Report): string {
  return [...report.findings.map((finding) => command(report, finding)), closingLine(report)].join('\n');
}

function command(report: Report, { rule, severity, place, message, help, related }: Finding): string {
  // Columns may only be given where a stretch begins and ends on one line.
  const columns: [string, number][] =
    place.line === place.endLine
      ? [
          ['col', place.column],
          ['endColumn', place.endColumn],
        ]
      : [];
  const properties: [string, string | number][] = [
    ['file', pathOf(report, place.file)],
    ['line', place.line],
    ['endLine', place.endLine],
    ...columns,
    ['title', rule],
  ];
  const address = report.ruleAddress?.(rule);
  const text = [
    message,
    `→ ${help}`,
    ...related.map(
      (one) => `${pathOf(report, one.place.file)}:${one.place.line}:${one.place.column} ${one.message}`,
    ),
    ...(address ? [address] : []),
  ].join('\n');
  const named = properties.map(([name, value]) => `${name}=${escapedProperty(String(value))}`).join(',');
  return `::${commands[severity]} ${named}::${escapedText(printable(text, true))}`;
}

/** The per cent sign first, because the others are written with it. */
function escapedText(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapedProperty(text: string): string {
  return escapedText(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
