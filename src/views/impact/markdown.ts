/** What a change does to the answers, as Markdown for the comment on a pull request. */
import { printable } from '../../check/reporters/printable.ts';
import { type ImpactInput, impactReport } from './report.ts';
import type { Piece, ReportItem } from './report-parts.ts';

/** The first line of the comment: by it a workflow knows its own comment again. */
export const impactMarker = '<!-- readback impact -->';

/** The most signs a comment may have (GitHub’s REST API refuses longer ones; from memory). */
export const mostCommentSigns = 65_536;

/** Room kept for the closing line that says what was left out. */
const closingSigns = 200;

/** At most `most` signs; items beyond are left out from the end, and counted. */
export function impactMarkdown(input: ImpactInput, most = mostCommentSigns): string {
  const { summary, grid, sections } = impactReport(input);
  const head = [impactMarker, '### What this changes for riders', '', escaped(summary)];
  const blocks = sections.flatMap(({ title, items }) =>
    items.map((item, index) => `${index === 0 ? `\n#### ${escaped(title)}\n\n` : ''}${itemText(item)}`),
  );
  const tail = grid === '' ? '' : `\n\n<sub>${escaped(grid)}</sub>`;
  let [text, shown] = [head.join('\n'), 0];
  const room = most - tail.length - closingSigns;
  for (const block of blocks) {
    if (text.length + block.length + 1 > room) break;
    text += `\n${block}`;
    shown += 1;
  }
  const leftOut = blocks.length - shown;
  const closing = `\n\n**${leftOut} more left out here for want of room; readback impact tells all.**`;
  return `${text}${leftOut > 0 ? closing : ''}${tail}\n`;
}

function itemText({ title, lines }: ReportItem): string {
  return [`- ${pieces(title)}`, ...lines.map((line) => `  - ${pieces(line)}`)].join('\n');
}

function pieces(all: readonly Piece[]): string {
  return all.map((one) => (typeof one === 'string' ? escaped(one) : inCode(one.code))).join('');
}

/**
 * Text that stays text: no markup, no HTML, no link, and nobody and nothing is mentioned by it (GitHub makes links of
 * `@name`, `#1`, `GH-1` and addresses even where they are escaped; a joiner of no width within them prevents it).
 */
function escaped(text: string): string {
  return printable(text)
    .replace(/[\\`*_[\]<>&|~]/g, '\\$&')
    .replace(/[@#]/g, '$&\u2060')
    .replace(/:(?=\/\/)|\bwww(?=\.)|\bgh(?=-\d)/gi, '$&\u2060')
    .replace(/^(\s*)([-+=]|\d+(?=[.)]))/, '$1\u2060$2');
}

/** A code span holds everything but its own fence, which is made longer than any run of backticks in it. */
function inCode(text: string): string {
  const shown = printable(text);
  if (!shown.includes('`')) return `\`${shown}\``;
  const longest = Math.max(...(shown.match(/`+/g) ?? []).map(({ length }) => length));
  const fence = '`'.repeat(longest + 1);
  return `${fence} ${shown} ${fence}`;
}
