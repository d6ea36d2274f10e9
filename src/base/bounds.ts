/**
 * What an entry cannot sensibly hold. Readers of YAML and Markdown take time that grows with the square of some
 * lengths, and stack that grows with depth; within these bounds every entry is read in a second or two at worst.
 */
import type { Finding } from './finding.ts';
import type { TextFile } from './text-file.ts';

/** Signs that open a list, a quotation or a key, one behind the other at the beginning of a line. */
const mostNested = 30;
/** Colons: an entry has one a field, and prose has few. */
const mostFields = 4000;
/** Characters of Markdown, and of Markdown without an empty line. */
const mostMarkdown = 64 * 1024;
const mostParagraph = 5000;

const nested = new RegExp(`^(?:[ \\t]*(?:>|[-*+?]|\\d{1,9}[.)])(?=\\s|>|$)){${mostNested}}`);

/** The first thing in an entry that goes beyond the bounds. */
export function beyondBounds(source: TextFile, isMarkdown: boolean): Finding | undefined {
  let paragraph = 0;
  let fields = 0;
  let inFrontMatter = isMarkdown && source.lineText(1).trimEnd() === '---';
  for (let line = 1; line <= source.lineCount; line += 1) {
    const text = source.lineText(line);
    const beyond = (message: string, help: string): Finding => ({
      rule: 'syntax',
      severity: 'error',
      place: { file: source.file, line, column: 1, endLine: line, endColumn: text.length + 1 },
      message,
      help,
      related: [],
    });
    if (nested.test(text)) {
      return beyond(
        `${mostNested} lists or quotations begin inside each other here, or more.`,
        'Take out the signs that are too many.',
      );
    }
    for (let at = text.indexOf(':'); at !== -1; at = text.indexOf(':', at + 1)) fields += 1;
    if (fields > mostFields) {
      return beyond(`This entry has more than ${mostFields} fields.`, 'Part it into several entries.');
    }
    if (!isMarkdown) continue;
    if (inFrontMatter) {
      inFrontMatter = line === 1 || text.trimEnd() !== '---';
      continue;
    }
    paragraph = text.trim() === '' ? 0 : paragraph + text.length + 1;
    if (paragraph > mostParagraph) {
      return beyond(
        `More than ${mostParagraph} characters stand here without an empty line.`,
        'Part the text into paragraphs, with an empty line between them.',
      );
    }
  }
  if (!isMarkdown || source.text.length <= mostMarkdown) return undefined;
  return {
    rule: 'syntax',
    severity: 'error',
    place: source.place(0),
    message: `This text has ${source.text.length} characters; the most is ${mostMarkdown}.`,
    help: 'Shorten it, or split it into several entries.',
    related: [],
  };
}
