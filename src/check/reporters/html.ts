/** Findings as one HTML page that needs nothing else: no scripts, no fonts, no network. */
import type { Finding, Place } from '../../base/index.ts';
import { counted } from '../../words/index.ts';
import type { Rule } from '../rule.ts';
import { closingLine } from './closing-line.ts';
import { codeFrame } from './code-frame.ts';
import { htmlStyle } from './html-style.ts';
import { printable } from './printable.ts';
import { pathOf, type Report } from './report.ts';
import { editsOf } from './rules.ts';

/** The most columns of a line that a page shows around what is pointed at. */
const frameColumns = 160;

const labels = { error: 'Error', warning: 'Warning', note: 'Note' } as const;

/** The page as text. `rules` are all rules of the check; those found against are explained at its end. */
export function htmlReport(report: Report, rules: readonly Rule[]): string {
  const byFile = [...Map.groupBy(report.findings, ({ place }) => place.file)];
  const spoken = rules.filter(({ id }) => report.findings.some(({ rule }) => rule === id));
  const line = closingLine(report);
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'">',
    `<title>Check: ${escaped(line)}</title>`,
    `<style>${htmlStyle}</style>`,
    '</head>',
    '<body>',
    '<header>',
    '<h1>Check of the entries</h1>',
    `<p class="sum">${escaped(line)}</p>`,
    '</header>',
    '<main>',
    ...(byFile.length > 1 ? fileList(byFile) : []),
    ...byFile.flatMap(([file, findings], index) => [
      `<section aria-labelledby="file-${index + 1}">`,
      `<h2 id="file-${index + 1}">${path(pathOf(report, file))}</h2>`,
      '<ul class="findings">',
      ...findings.map((finding) => item(report, finding)),
      '</ul>',
      '</section>',
    ]),
    ...(spoken.length > 0 ? ruleSection(report, spoken) : []),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function fileList(byFile: readonly (readonly [file: string, findings: readonly Finding[]])[]): string[] {
  return [
    '<nav aria-label="Files"><ol>',
    ...byFile.map(
      ([file, findings], index) =>
        `<li><a href="#file-${index + 1}">${path(file)}</a> <span class="count">${counted(findings.length, 'finding')}</span></li>`,
    ),
    '</ol></nav>',
  ];
}

function item(report: Report, finding: Finding): string {
  const { rule, severity, place, message, help, related } = finding;
  return [
    `<li class="finding ${severity}">`,
    `<p class="head"><strong>${labels[severity]}</strong> <a href="#rule-${escaped(rule)}">${escaped(rule)}</a> <span class="at">line ${place.line}, column ${place.column}</span></p>`,
    `<p class="what">${escaped(message)}</p>`,
    frame(report, place),
    `<p class="help">${escaped(help)}</p>`,
    ...related.map(
      (one) =>
        `<div class="related"><p>${escaped(one.message)} <span class="at">${path(pathOf(report, one.place.file))}, line ${one.place.line}</span></p>${frame(report, one.place)}</div>`,
    ),
    '</li>',
  ].join('');
}

function frame(report: Report, place: Place): string {
  const shown = codeFrame(report.sourceOf, place, frameColumns);
  if (!shown) return '';
  const mark = shown.marked === '' ? '<mark class="point"></mark>' : `<mark>${escaped(shown.marked)}</mark>`;
  return `<pre><span class="line">${shown.line}</span><code>${escaped(shown.before)}${mark}${escaped(shown.after)}</code></pre>`;
}

function ruleSection(report: Report, rules: readonly Rule[]): string[] {
  return [
    '<section aria-labelledby="rules" class="rules">',
    '<h2 id="rules">The rules</h2>',
    ...rules.map((rule) => {
      const address = report.ruleAddress?.(rule.id);
      return [
        `<article id="rule-${escaped(rule.id)}">`,
        `<h3>${escaped(rule.id)}</h3>`,
        `<p><strong>${escaped(rule.title)}</strong></p>`,
        `<p>${escaped(rule.explanation)}</p>`,
        ...rule.examples
          .slice(0, 1)
          .flatMap((example) => [
            `<p>For example ${escaped(example.title)}:</p>`,
            ...editsOf(example).map(
              ({ bad, good }) =>
                `<dl><dt>wrong</dt><dd><pre><code>${escaped(bad.trimEnd() || '(left out)')}</code></pre></dd><dt>right</dt><dd><pre><code>${escaped(good.trimEnd() || '(no such file)')}</code></pre></dd></dl>`,
            ),
          ]),
        ...(address ? [`<p><a href="${escaped(address)}">${escaped(rule.id)} on the site</a></p>`] : []),
        '</article>',
      ].join('');
    }),
    '</section>',
  ];
}

/** A path that may be broken after its slashes. */
function path(text: string): string {
  return escaped(text).replaceAll('/', '/<wbr>');
}

/** Text as HTML, in content and in quoted attributes. */
function escaped(text: string): string {
  const entities: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
  };
  return printable(text, true).replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);
}
