/** Reads one YAML document strictly (YAML 1.2 core schema) and remembers where each value stands. */
import { isAlias, isMap, isScalar, isSeq, type Node, parseDocument, type YAMLError } from 'yaml';
import type { Finding, Place } from './finding.ts';
import type { TextFile } from './text-file.ts';

/** A path into parsed data, as Zod and the rules name it. */
export type DataPath = readonly PropertyKey[];

/** Where the parts of a YAML document stand in its file. */
export interface Positions {
  /**
   * The place of the value at `path`, or of its key. Where the path does not exist (a missing key), the
   * place of the nearest parent that does.
   */
  place(path: DataPath, part?: 'key' | 'value'): Place;
  /** The source text of the value at `path`, such as `0x7E8` for an unquoted number. */
  sourceOf(path: DataPath): string | undefined;
}

export interface YamlReading {
  /** The plain data; undefined where the text could not be read as YAML. */
  readonly data: unknown;
  readonly positions: Positions;
  readonly findings: readonly Finding[];
}

type Span = readonly [keyStart: number, keyEnd: number, valueStart: number, valueEnd: number];

/**
 * Parses `text`, a YAML document that begins at `offset` of `source` (0, or the front matter of a Markdown
 * file). Anchors and aliases are refused: entries are short, and a repeated value is easier to read.
 */
export function readYaml(source: TextFile, text: string = source.text, offset = 0): YamlReading {
  const document = parseDocument(text, {
    version: '1.2',
    schema: 'core',
    strict: true,
    uniqueKeys: true,
    stringKeys: true,
    prettyErrors: false,
  });
  const spans = new Map<string, Span>();
  const aliasAt = document.contents ? collectSpans(document.contents, spans, offset) : undefined;
  // What follows the first error is mostly its echo.
  const findings = document.errors.slice(0, 1).map((error) => syntaxFinding(source, error, offset, spans));
  if (aliasAt !== undefined) {
    findings.push({
      rule: 'syntax',
      severity: 'error',
      place: source.place(aliasAt, aliasAt + 1),
      message: 'Anchors (&name) and aliases (*name) are not used in entries.',
      help: 'Write the value out in each place.',
      related: [],
    });
  }
  const readable = findings.length === 0;
  return {
    data: readable ? (document.toJS() as unknown) : undefined,
    positions: new SpanPositions(source, spans, offset),
    findings,
  };
}

class SpanPositions implements Positions {
  readonly #source: TextFile;
  readonly #spans: ReadonlyMap<string, Span>;
  readonly #start: number;

  constructor(source: TextFile, spans: ReadonlyMap<string, Span>, start: number) {
    this.#source = source;
    this.#spans = spans;
    this.#start = start;
  }

  place(path: DataPath, part: 'key' | 'value' = 'value'): Place {
    for (let length = path.length; length >= 0; length -= 1) {
      const span = this.#spans.get(pointer(path.slice(0, length)));
      if (!span) continue;
      // A parent that stands in for a missing key is named by its key, not by its whole block.
      const wantKey = part === 'key' || length < path.length;
      const [keyStart, keyEnd, valueStart, valueEnd] = span;
      if (wantKey && keyStart >= 0) return this.#source.place(keyStart, keyEnd);
      if (length < path.length) return this.#source.place(valueStart, valueStart);
      return this.#source.place(valueStart, valueEnd);
    }
    return this.#source.place(this.#start);
  }

  sourceOf(path: DataPath): string | undefined {
    const span = this.#spans.get(pointer(path));
    return span ? this.#source.text.slice(span[2], span[3]) : undefined;
  }
}

function pointer(path: DataPath): string {
  return path.map((part) => `/${String(part)}`).join('');
}

/** Records the span of every value below `node`; returns the offset of the first anchor or alias, if any. */
function collectSpans(root: Node, spans: Map<string, Span>, offset: number): number | undefined {
  let forbidden: number | undefined;
  const forbid = (node: Node): void => {
    forbidden ??= offset + (node.range?.[0] ?? 0);
  };
  const visit = (node: Node, path: string, keyStart: number, keyEnd: number): void => {
    const start = offset + (node.range?.[0] ?? 0);
    const end = offset + (node.range?.[1] ?? node.range?.[0] ?? 0);
    spans.set(path, [keyStart, keyEnd, start, end]);
    if (isAlias(node) || ('anchor' in node && node.anchor)) forbid(node);
    if (isMap(node)) {
      for (const pair of node.items) {
        if (!isScalar(pair.key)) continue;
        const key = pair.key as Node & { value: unknown };
        const from = offset + (key.range?.[0] ?? 0);
        const to = offset + (key.range?.[1] ?? 0);
        const childPath = `${path}/${String(key.value)}`;
        if (pair.value) visit(pair.value as Node, childPath, from, to);
        else spans.set(childPath, [from, to, to, to]);
      }
    } else if (isSeq(node)) {
      node.items.forEach((item, index) => {
        if (item) visit(item as Node, `${path}/${index}`, -1, -1);
      });
    }
  };
  visit(root, '', -1, -1);
  return forbidden;
}

const syntaxHelp: Readonly<Partial<Record<string, readonly [message: string, help: string]>>> = {
  DUPLICATE_KEY: ['This key is already used in the same block.', 'Keep one of the two and delete the other.'],
  TAB_AS_INDENT: ['A tab stands where spaces are needed.', 'Indent with two spaces instead of a tab.'],
  BAD_INDENT: ['This line is not indented like its neighbours.', 'Line it up with the lines above it.'],
  MULTIPLE_DOCS: [
    'A second document begins here.',
    'Keep one entry in a file: move what follows the line --- to its own file.',
  ],
  MISSING_CHAR: [
    'A quote or bracket is opened here and never closed, or a colon is missing.',
    'Close it at the end of the value.',
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    'A value and another “name: value” stand on one line, or the indent is off.',
    'Put each “name: value” on a line of its own; put quotes around text that contains a colon.',
  ],
  UNEXPECTED_TOKEN: [
    'This does not belong here: the value before it has ended.',
    'Look for a quote inside a quoted text, or for a list item among “name: value” lines.',
  ],
  BAD_SCALAR_START: [
    'Text cannot begin with this sign unless it stands in quotes.',
    'Put the whole value in quotes.',
  ],
  MULTILINE_IMPLICIT_KEY: [
    'A colon is missing: this line is neither “name: value” nor part of the one above.',
    'Add the colon, with a space after it.',
  ],
};

function syntaxFinding(
  source: TextFile,
  error: YAMLError,
  offset: number,
  spans: ReadonlyMap<string, Span>,
): Finding {
  const known = syntaxHelp[error.code];
  const opening = error.code === 'MISSING_CHAR' ? openedAt(source, error.pos[0] + offset, spans) : undefined;
  const [start, end] = opening === undefined ? error.pos : [opening - offset, opening - offset + 1];
  return {
    rule: 'syntax',
    severity: 'error',
    place: source.place(offset + start, offset + end),
    message: known?.[0] ?? `This cannot be read as YAML: ${error.message.split('\n')[0] ?? error.code}.`,
    help: known?.[1] ?? 'Compare with an entry of the same kind that works.',
    related: [],
  };
}

/** The parser notices an unclosed quote or bracket where the text ends; the person needs its beginning. */
function openedAt(source: TextFile, noticedAt: number, spans: ReadonlyMap<string, Span>): number | undefined {
  const open = [...spans.values()].filter(
    ([, , start, end]) =>
      start < noticedAt && end >= noticedAt && '"\'[{'.includes(source.text.charAt(start)),
  );
  return open.at(-1)?.[2];
}
