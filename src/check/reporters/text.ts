/** Findings as text for a terminal: grouped by file, each with what to do next, and a closing line. */
import { styleText } from 'node:util';
import type { Finding, Place } from '../../base/index.ts';
import { countFindings } from '../counts.ts';

export interface TextOptions {
  /** Colour the text for a terminal. */
  readonly colour: boolean;
  /** What to put before each path, so that it can be clicked or copied: the content folder. */
  readonly folder: string;
}

export function textReport(findings: readonly Finding[], { colour, folder }: TextOptions): string {
  const paint = (style: Parameters<typeof styleText>[0], text: string): string =>
    colour ? styleText(style, text, { validateStream: false }) : text;
  const at = (place: Place): string => `${joined(folder, place.file)}:${place.line}:${place.column}`;
  const styles = { error: 'red', warning: 'yellow', note: 'cyan' } as const;
  const lines = findings.flatMap((finding, index) => [
    ...(index > 0 && findings[index - 1]?.place.file !== finding.place.file ? [''] : []),
    `${paint('bold', at(finding.place))}  ${paint(styles[finding.severity], finding.severity)}  ${paint('dim', finding.rule)}`,
    `  ${finding.message}`,
    `  → ${finding.help}`,
    ...finding.related.map((one) => paint('dim', `    ${at(one.place)}  ${one.message}`)),
  ]);
  return [...lines, ...(lines.length > 0 ? [''] : []), closingLine(findings)].join('\n');
}

function closingLine(findings: readonly Finding[]): string {
  const { error, warning, note } = countFindings(findings);
  const parts = [
    error > 0 || warning + note === 0 ? plural(error, 'error') : '',
    warning > 0 ? plural(warning, 'warning') : '',
    note > 0 ? plural(note, 'note') : '',
  ].filter((part) => part !== '');
  return error + warning === 0
    ? `No contradictions, nothing unsourced${note > 0 ? ` (${plural(note, 'note')})` : ''}.`
    : `${parts.join(', ')} in ${plural(new Set(findings.map((one) => one.place.file)).size, 'file')}.`;
}

function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function joined(folder: string, file: string): string {
  return folder === '' || folder === '.' ? file : `${folder.replace(/\/+$/, '')}/${file}`;
}
