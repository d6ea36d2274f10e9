/** The rules themselves: as a list, one at length for a terminal, and as JSON. */
import { styleText } from 'node:util';
import type { RulesResult } from '../../../schemas/results/rules.ts';
import type { Rule, RuleExample } from '../rule.ts';

/** Columns that explanations are broken at. */
const textColumns = 80;

/** All rules, a line each: id, severity, title. */
export function ruleTitles(rules: readonly Rule[]): string {
  const idColumns = Math.max(...rules.map(({ id }) => id.length));
  const severityColumns = Math.max(...rules.map(({ severity }) => severity.length));
  return rules
    .map(
      ({ id, severity, title }) => `${id.padEnd(idColumns)}  ${severity.padEnd(severityColumns)}  ${title}`,
    )
    .join('\n');
}

/** A rule at length: what it demands, why, and each example with its mistake and without. */
export function ruleText(rule: Rule, colour: boolean): string {
  const paint = (style: Parameters<typeof styleText>[0], text: string): string =>
    colour ? styleText(style, text, { validateStream: false }) : text;
  return [
    `${paint('bold', rule.id)}  ${rule.severity}`,
    ...wrapped(rule.title),
    '',
    ...wrapped(rule.explanation),
    ...rule.examples.flatMap((example) => [
      '',
      `Example: ${example.title}`,
      ...editsOf(example).flatMap(({ file, bad, good }) => [
        `  ${paint('dim', file)}`,
        ...side('wrong', bad, 'left out').map((line) => paint('red', line)),
        ...side('right', good, 'no such file').map((line) => paint('green', line)),
      ]),
    ]),
  ].join('\n');
}

/** The edits that make an example's mistake: the first, and those that come with it. */
export function editsOf({
  file,
  bad,
  good,
  also = [],
}: RuleExample): { file: string; bad: string; good: string }[] {
  return [{ file, bad, good }, ...also];
}

/** Rules as the object that `readback check --rules --json` prints. */
export function rulesReport(rules: readonly Rule[]): RulesResult {
  return {
    rules: rules.map(({ id, title, severity, explanation, examples }) => ({
      id,
      title,
      severity,
      explanation,
      examples: examples.map((example) => ({
        title: example.title,
        edits: editsOf(example).map(({ file, bad, good }) => ({ file, bad, good })),
      })),
    })),
  };
}

function side(label: string, text: string, whenEmpty: string): string[] {
  const lines = text === '' ? [`(${whenEmpty})`] : text.replace(/\n$/, '').split('\n');
  return lines.map(
    (line, index) => `  ${index === 0 ? label : ' '.repeat(label.length)} │ ${line.replaceAll('\t', '⇥')}`,
  );
}

function wrapped(text: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > textColumns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
