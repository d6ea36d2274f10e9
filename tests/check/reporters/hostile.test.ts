/** Content that looks like markup, like a command, or like an escape, in every reporter. */
import { expect, test } from 'vitest';
import type { Finding } from '../../../src/base/index.ts';
import { TextFile } from '../../../src/base/index.ts';
import { githubReport, htmlReport, type Report, rules, textReport } from '../../../src/check/index.ts';

const nasty = '</code></pre><script>alert(1)</script> "x" \'y\' & 100%\u001b[31m';
const source = new TextFile('a,b:c%.yaml', `name: ${nasty}\n`);
const finding: Finding = {
  rule: 'schema',
  severity: 'warning',
  place: source.place(6, 6 + nasty.length),
  message: `“${nasty}” is wrong, 50%:\n::error::no.`,
  help: nasty,
  related: [{ place: source.place(0, 4), message: nasty }],
};
const report: Report = {
  findings: [finding],
  folder: '.',
  sourceOf: () => source,
  setAside: 2,
  ruleAddress: () => 'https://sample.example/?a=1&b="<',
};

test('HTML: no element, attribute or script comes from content', () => {
  const html = htmlReport(report, rules);
  const withoutText = html.replace(/<style>.*?<\/style>/s, '');
  const tags = new Set([...withoutText.matchAll(/<([a-z][a-z0-9]*)/g)].map((match) => match[1]));
  expect([...tags].sort()).toEqual(
    'a article body code dd div dl dt h1 h2 h3 head header html li main mark meta p pre section span strong style title ul'
      .split(' ')
      .filter((tag) => tag !== 'style'),
  );
  expect(html).toContain('&lt;/code&gt;&lt;/pre&gt;&lt;script&gt;alert(1)');
  expect(html).toContain('href="https://sample.example/?a=1&amp;b=&quot;&lt;"');
  expect(html).not.toContain('\u001b');
  expect(html).toContain("default-src 'none'");
});

test('GitHub: one command a finding, escaped as its documentation prescribes', () => {
  const lines = githubReport(report).split('\n');
  expect(lines).toHaveLength(2);
  const [command = '', closing] = lines;
  // https://github.com/actions/toolkit, packages/core/src/command.ts: % %25, CR %0D, LF %0A; in properties also
  // : %3A and , %2C.
  expect(command).toMatch(
    /^::warning file=a%2Cb%3Ac%25\.yaml,line=1,endLine=1,col=7,endColumn=\d+,title=schema::“/,
  );
  expect(command).toContain('is wrong, 50%25:%0A::error::no.%0A→ ');
  expect(command).toContain('100%25␛[31m');
  expect(closing).toBe('1 warning in 1 file. 2 findings set aside by exceptions.');
});

test('GitHub: columns only where a stretch lies on one line; notes are notices', () => {
  const place = { ...finding.place, endLine: 2, endColumn: 3 };
  const [command] = githubReport({
    ...report,
    findings: [{ ...finding, severity: 'note', place, message: 'News.', help: 'None.', related: [] }],
    ruleAddress: () => undefined,
  }).split('\n');
  expect(command).toBe('::notice file=a%2Cb%3Ac%25.yaml,line=1,endLine=2,title=schema::News.%0A→ None.');
});

test('text: nothing in content steers the terminal', () => {
  expect(textReport(report, false).replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
});

test('closing lines', () => {
  const closing = (more: Partial<Report>) =>
    githubReport({ ...report, ...more })
      .split('\n')
      .at(-1);
  const since = { revision: 'main', commit: 'c', older: 3 };
  expect(closing({ findings: [], setAside: 0 })).toBe('No contradictions, nothing unsourced.');
  expect(closing({ findings: [], setAside: 1 })).toBe(
    'No contradictions, nothing unsourced. 1 finding set aside by an exception.',
  );
  expect(closing({ findings: [], setAside: 0, since })).toBe(
    'Nothing new is contradictory or unsourced since main. 3 older findings left out.',
  );
  expect(closing({ setAside: 0, since: { ...since, older: 0 } })).toBe('1 warning in 1 file since main.');
});
