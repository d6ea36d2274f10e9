/** Each reporter on one base with mistakes, as files one can open: tests/check/reporters/golden/. */
import { stripVTControlCharacters } from 'node:util';
import { expect, test } from 'vitest';
import { checkResultSchema } from '../../../schemas/results/check.ts';
import { htmlReport, rules, textReport } from '../../../src/check/index.ts';
import { reportFormats, reportText } from '../../../src/cli/report-file.ts';
import { brokenReport } from './broken-example.ts';

const report = await brokenReport();

const goldens = {
  text: 'report.txt',
  json: 'report.json',
  sarif: 'report.sarif',
  github: 'report.github.txt',
  html: 'report.html',
} as const;

/** What is said of a rule changes with the rule: the goldens show what is said of the mistakes. */
const shownRules = rules.filter(({ id }) => ['unknown-key', 'sessions-disagree'].includes(id));

test.each(reportFormats)('%s', async (format) => {
  const text = format === 'html' ? htmlReport(report, shownRules) : reportText(report, format, false);
  const shown = format === 'sarif' ? withoutRules(text) : text;
  await expect(`${shown.trimEnd()}\n`).toMatchFileSnapshot(`golden/${goldens[format]}`);
});

function withoutRules(text: string): string {
  const log = JSON.parse(text) as {
    runs: { tool: { driver: { rules: { id: string }[] } }; results: { ruleIndex?: number }[] }[];
  };
  for (const run of log.runs) {
    run.tool.driver.rules = run.tool.driver.rules.filter(({ id }) => id === 'unknown-key');
    for (const result of run.results) delete result.ruleIndex;
  }
  return JSON.stringify(log, undefined, 2);
}

test('the goldens are of a report with findings in several files, some with related places', () => {
  expect(new Set(report.findings.map(({ place }) => place.file)).size).toBeGreaterThanOrEqual(4);
  expect(report.findings.some(({ related }) => related.length > 0)).toBe(true);
  expect(report.setAside).toBe(1);
});

test('JSON has the published shape', () => {
  expect(checkResultSchema.parse(JSON.parse(reportText(report, 'json', false))).findings).toHaveLength(
    report.findings.length,
  );
});

test('colour changes nothing but the colour', () => {
  const coloured = textReport(report, true);
  expect(coloured).toContain('\u001b[31m');
  expect(stripVTControlCharacters(coloured)).toBe(textReport(report, false));
  expect(textReport(report, false)).not.toContain('\u001b');
});

// The second is the end of a line with nothing after the colon.
test('every caret stands under the text the finding points at', () => {
  const lines = textReport(report, false).split('\n');
  const carets = lines.flatMap((line, index) => {
    const from = line.indexOf('^');
    if (!/^ +│ +\^+$/.test(line)) return [];
    return (lines[index - 1] ?? '').slice(from, line.length);
  });
  expect(carets).toEqual(['2025-12-31', '', '1.5481', 'orign', '3.6']);
});
