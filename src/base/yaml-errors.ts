/** What the YAML parser finds wrong, said to someone who has never heard of YAML. */
import type { YAMLError } from 'yaml';
import type { Finding, RelatedPlace } from './finding.ts';
import type { TextFile } from './text-file.ts';

/** Where a value or key stands: offsets in the file. */
export type Span = readonly [keyStart: number, keyEnd: number, valueStart: number, valueEnd: number];

/** What is known of a document besides its errors. */
export interface DocumentSpans {
  readonly spans: ReadonlyMap<string, Span>;
  /** The start of a repeated key to where its first use starts and ends. */
  readonly repeated: ReadonlyMap<number, readonly [number, number]>;
}

interface Reading {
  /** Offsets in the file; the end is cut at the end of the line. */
  readonly start: number;
  readonly end?: number;
  readonly message: string;
  readonly help: string;
  readonly related?: readonly RelatedPlace[];
}

/** What a value of the form &name or *name is to YAML. */
export const linkMessage =
  'A value that begins with & or * is taken for a link to another value, and such links are not used in entries.';

/** One finding for the first error of the parser: what follows it is mostly its echo. */
export function syntaxFinding(
  source: TextFile,
  error: YAMLError,
  offset: number,
  document: DocumentSpans,
): Finding {
  const at = error.pos[0] + offset;
  const reading =
    oddSpace(source, at) ?? bareTest(source.text, at, document) ?? readingOf(source, error, at, document);
  const { start, message, help, related = [] } = reading;
  const lineEnd = endOfLine(source.text, start);
  const end = Math.min(reading.end ?? error.pos[1] + offset, Math.max(lineEnd, start));
  return { rule: 'syntax', severity: 'error', place: source.place(start, end), message, help, related };
}

/** An error of which no more is known than the parser's own words. */
function unknownReading(error: YAMLError, start: number): Reading {
  return {
    start,
    message: `This cannot be read as YAML: ${error.message.split('\n')[0] ?? error.code}.`,
    help: 'Compare with an entry of the same kind that works.',
  };
}

function readingOf(source: TextFile, error: YAMLError, at: number, document: DocumentSpans): Reading {
  const { text } = source;
  const line = text.slice(at, endOfLine(text, at));
  switch (error.code) {
    case 'DUPLICATE_KEY':
      return repeatedKey(source, at, document);
    case 'TAB_AS_INDENT':
      return {
        start: at,
        message: 'A tab stands where spaces are needed.',
        help: 'Indent with two spaces instead of a tab.',
      };
    case 'BAD_INDENT': {
      const opening = error.message.startsWith('Flow') ? openedAt(text, at, document.spans) : undefined;
      if (opening !== undefined) return unclosed(opening);
      return {
        start: at,
        message: 'This line is not indented like its neighbours.',
        help: 'Line it up with the lines above it.',
      };
    }
    case 'MULTIPLE_DOCS':
      return {
        start: at,
        message: 'A second document begins here.',
        help: 'Keep one entry in a file: move what follows the line --- to its own file.',
      };
    case 'MISSING_CHAR': {
      const opening = openedAt(text, at, document.spans);
      return opening === undefined ? noColon(text, at) : unclosed(opening);
    }
    case 'BLOCK_AS_IMPLICIT_KEY':
      return nestedOnOneLine(text, at, line);
    case 'BLOCK_IN_FLOW':
      return secondColon(at);
    case 'UNEXPECTED_TOKEN':
      if (/^-\s/.test(line)) return listItem(at);
      return {
        start: at,
        message: 'This does not belong here: the value before it has ended.',
        help: 'Look for a quote inside a quoted text, or a bracket too many; put the other kind of quotes around the whole text.',
      };
    case 'BAD_SCALAR_START':
      return {
        start: at,
        message: `Text cannot begin with the sign ${line.charAt(0)} unless it stands in quotes.`,
        help: 'Put the whole value in quotes.',
      };
    case 'BAD_ALIAS':
    case 'ALIAS_PROPS':
    case 'MULTIPLE_ANCHORS':
      return {
        start: at,
        message: linkMessage,
        help: 'Put the whole value in quotes, if it is text; else write the value out.',
      };
    case 'BAD_DQ_ESCAPE':
      return {
        start: at,
        end: at + 2,
        message: `In double quotes a backslash begins a special sign, and ${line.slice(0, 2)} is none.`,
        help: 'Put the value in single quotes instead; a backslash is itself there.',
      };
    case 'MULTILINE_IMPLICIT_KEY':
      return /^-\s/.test(line) ? listItem(at) : noColon(text, at);
    case 'NON_STRING_KEY':
      return {
        start: at,
        message: 'A field’s name must be a plain word, and this is a list or a block.',
        help: 'Write “name: value”, or take the brackets away.',
      };
    case 'RESOURCE_EXHAUSTION':
      return {
        start: at,
        message: 'Brackets or list signs stand inside each other too deep to be read.',
        help: 'Take out those that are too many.',
      };
    default:
      return unknownReading(error, at);
  }
}

function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  const stop = end === -1 ? text.length : end;
  return text.charAt(stop - 1) === '\r' && stop > from ? stop - 1 : stop;
}

function repeatedKey(source: TextFile, at: number, document: DocumentSpans): Reading {
  const first = document.repeated.get(at);
  const key = first ? source.text.slice(first[0], first[1]) : '';
  return {
    start: at,
    end: at + Math.max(1, key.length),
    message: `${key ? `“${key}”` : 'This field'} stands twice in the same block.`,
    help: 'Keep one of the two and delete the other.',
    related: first ? [{ place: source.place(first[0], first[1]), message: 'It stands here first.' }] : [],
  };
}

function unclosed(start: number): Reading {
  return {
    start,
    end: start + 1,
    message: 'A quote or bracket is opened here and never closed.',
    help: 'Close it at the end of the value.',
  };
}

/** A line that is neither “name: value” nor part of a text. */
function noColon(text: string, at: number): Reading {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const indent = /^ */.exec(text.slice(start))?.[0].length ?? 0;
  const line = text.slice(start + indent, endOfLine(text, start));
  const glued = /^[A-Za-z][A-Za-z0-9]*:(?=\S)/.exec(line);
  const place = { start: start + indent, end: start + indent + line.length };
  return glued
    ? {
        ...place,
        message: 'A space is missing after the colon.',
        help: `Write “${glued[0]} ” and then the value.`,
      }
    : {
        ...place,
        message: 'A colon is missing: this line is neither “name: value” nor part of the one above.',
        help: 'Add the colon, with a space after it.',
      };
}

function listItem(start: number): Reading {
  return {
    start,
    message: 'A list item cannot stand here: the field already has a value, or is on the same line.',
    help: 'Write the field’s name and colon alone on a line, and each item on a line of its own below, with “- ” before it.',
  };
}

function secondColon(start: number): Reading {
  return {
    start,
    message: 'The value has a second colon in it, which begins a new field.',
    help: 'Put quotes around the whole value; or put each “name: value” on a line of its own.',
  };
}

/** A value with a colon in it, or a line below it that is indented as if it belonged to it. */
function nestedOnOneLine(text: string, at: number, line: string): Reading {
  if (/^-\s/.test(line)) return listItem(at);
  if (/:(?:\s|$)/.test(line)) return secondColon(at);
  const next = /\n(?:[ \t]*(?:#.*)?\r?\n)*([ \t]*)(?=\S)/.exec(text.slice(at));
  const start = next ? at + next.index + next[0].length : at;
  return {
    start,
    end: endOfLine(text, start),
    message: 'This line is indented further than its neighbours.',
    help: 'Line it up with the lines it belongs to.',
  };
}

/** The parser notices an unclosed quote or bracket where the text ends; the person needs its beginning. */
function openedAt(text: string, noticedAt: number, spans: ReadonlyMap<string, Span>): number | undefined {
  let opening: number | undefined;
  for (const [, , start, end] of spans.values()) {
    if (start < noticedAt && end >= noticedAt && '"\'[{'.includes(text.charAt(start) || ' ')) opening = start;
  }
  return opening;
}

/** Tests of decision tables that YAML takes for something else where they stand without quotes. */
const bareTests = /:[ \t]+(>=?[ \t]*-?[\d.]+|[[(] *-?[\d.]+ *\.\. *-?[\d.]+ *[\])]|-(?= *[,}]))/;

function bareTest(text: string, at: number, document: DocumentSpans): Reading | undefined {
  for (const near of [at, openedAt(text, at, document.spans) ?? at]) {
    const from = text.lastIndexOf('\n', near - 1) + 1;
    const found = bareTests.exec(text.slice(from, endOfLine(text, from)));
    if (!found?.[1]) continue;
    const start = from + found.index + found[0].length - found[1].length;
    const isRange = /^[[(]/.test(found[1]);
    return {
      start,
      end: start + found[1].length,
      message: isRange
        ? 'A range without quotes is taken for a list that is never closed.'
        : `Without quotes, a value cannot begin with the sign ${found[1].charAt(0)}.`,
      help: `Put the test in quotes: "${found[1]}".`,
    };
  }
  return undefined;
}

/** Spaces that look like one and are none, where only a plain one counts: before a line, or after a colon or hyphen. */
const odd = /^[ \t]*(?:- +)?(?:[^\s"'#]+:)?[ ]*([\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]+)/;

function oddSpace(source: TextFile, at: number): Reading | undefined {
  const { line } = source.place(at);
  for (const number of [line, line + 1]) {
    const text = source.lineText(number);
    const spaces = odd.exec(text);
    if (!spaces?.[1]) continue;
    const lineStart =
      at - (source.place(at).column - 1) + (number === line ? 0 : source.lineText(line).length + 1);
    const crlf = number !== line && source.text.charAt(lineStart - 1) === '\r' ? 1 : 0;
    const start = lineStart + crlf + spaces[0].length - spaces[1].length;
    return {
      start,
      end: start + spaces[1].length,
      message: 'A special space, such as a no-break space, stands where a plain one is needed.',
      help: 'Delete it and type a plain space; it often comes with text copied from a page or a word processor.',
    };
  }
  return undefined;
}
