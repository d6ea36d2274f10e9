/** Findings as a SARIF 2.1.0 log (OASIS Standard, 27 March 2020), which code hosts show beside the lines. */
import { createHash } from 'node:crypto';
import type { Finding, Place } from '../../base/index.ts';
import { fingerprintOf } from '../fingerprint.ts';
import type { Rule } from '../rule.ts';
import { pathOf, type Report } from './report.ts';
import { editsOf } from './rules.ts';

/** The object to be written as JSON. `rules` are all rules of the check, found against or not. */
export function sarifReport(report: Report, rules: readonly Rule[]): object {
  const seen = new Map<string, number>();
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Readback', rules: rules.map((rule) => descriptor(report, rule)) } },
        columnKind: 'utf16CodeUnits',
        results: report.findings.map((finding) => result(report, rules, finding, seen)),
      },
    ],
  };
}

function descriptor(report: Report, { id, title, explanation, severity, examples }: Rule): object {
  const helpUri = report.ruleAddress?.(id);
  const shown = examples.map(
    (example) =>
      `Example: ${example.title}\n\n${editsOf(example)
        .map(
          ({ file, bad, good }) =>
            `\`${file}\`, wrong:\n\n${fenced(bad === '' ? '(left out)' : bad)}\n\nright:\n\n${fenced(good === '' ? '(no such file)' : good)}`,
        )
        .join('\n\n')}`,
  );
  return {
    id,
    shortDescription: { text: title },
    fullDescription: { text: explanation },
    help: { text: `${title} ${explanation}`, markdown: [title, explanation, ...shown].join('\n\n') },
    ...(helpUri ? { helpUri } : {}),
    defaultConfiguration: { level: severity },
  };
}

function fenced(text: string): string {
  return `\`\`\`\n${text.replace(/\n$/, '')}\n\`\`\``;
}

/** @param seen how often each fingerprint has come up: findings alike in all it holds are counted on. */
function result(report: Report, rules: readonly Rule[], finding: Finding, seen: Map<string, number>): object {
  const fingerprint = fingerprintOf(finding, report.sourceOf);
  const count = (seen.get(fingerprint) ?? 0) + 1;
  seen.set(fingerprint, count);
  const ruleIndex = rules.findIndex(({ id }) => id === finding.rule);
  return {
    ruleId: finding.rule,
    ...(ruleIndex === -1 ? {} : { ruleIndex }),
    level: finding.severity,
    message: { text: `${finding.message} ${finding.help}` },
    locations: [{ physicalLocation: physical(report, finding.place) }],
    ...(finding.related.length === 0
      ? {}
      : {
          relatedLocations: finding.related.map(({ place, message }, index) => ({
            id: index + 1,
            physicalLocation: physical(report, place),
            message: { text: message },
          })),
        }),
    partialFingerprints: {
      'findingHash/v1': createHash('sha256').update(`${fingerprint} ${count}`).digest('hex'),
    },
    ...(report.since ? { baselineState: 'new' } : {}),
  };
}

/** A longer line is not repeated with each finding in it: viewers have the file. */
const longestSnippet = 1000;

function physical(report: Report, place: Place): object {
  const line = report.sourceOf(place.file)?.lineText(place.line);
  return {
    artifactLocation: { uri: pathOf(report, place.file).split('/').map(encodeURIComponent).join('/') },
    region: {
      startLine: place.line,
      startColumn: place.column,
      endLine: place.endLine,
      endColumn: place.endColumn,
    },
    ...(line && line.length <= longestSnippet && place.line === place.endLine
      ? { contextRegion: { startLine: place.line, snippet: { text: line } } }
      : {}),
  };
}
