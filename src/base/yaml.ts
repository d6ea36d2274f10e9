/** Reads one YAML document strictly (YAML 1.2 core schema) and remembers where each value stands. */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap } from 'yaml';
import type { Finding, Place } from './finding.ts';
import type { TextFile } from './text-file.ts';
import { linkMessage, type Span, syntaxFinding } from './yaml-errors.ts';

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
  /** What follows the value at `path` on its line, a comment for one. */
  restOfLine(path: DataPath): string;
  /** Numbers in a notation that readers of YAML do not agree on: `012` is 12 here and 10 elsewhere; `0x7E8`. */
  readonly oddNumbers: readonly DataPath[];
}

export interface YamlReading {
  /** The plain data; undefined where the text could not be read as YAML. */
  readonly data: unknown;
  readonly positions: Positions;
  readonly findings: readonly Finding[];
}

/**
 * Parses `text`, a YAML document that begins at `offset` of `source` (0, or the front matter of a Markdown
 * file). Anchors, aliases and tags are refused, and so never expanded: entries are short, and a repeated
 * value is easier to read.
 */
export function readYaml(source: TextFile, text: string = source.text, offset = 0): YamlReading {
  const document = parseDocument(text, {
    version: '1.2',
    schema: 'core',
    strict: true,
    uniqueKeys: true,
    stringKeys: true,
    prettyErrors: false,
    logLevel: 'error',
  });
  const collected = new Collector(source, offset);
  if (document.contents) collected.visit(document.contents, '', -1, -1);
  const [error] = document.errors;
  const { refused } = collected;
  // One slip has many consequences for a parser: the earliest is the one to mend.
  const finding =
    refused && (!error || refused.start <= error.pos[0] + offset)
      ? refused.finding
      : error && syntaxFinding(source, error, offset, collected);
  return {
    data: finding ? undefined : (document.toJS() as unknown),
    positions: new SpanPositions(source, collected.spans, offset, collected.oddNumbers),
    findings: finding ? [finding] : [],
  };
}

class SpanPositions implements Positions {
  readonly #source: TextFile;
  readonly #spans: ReadonlyMap<string, Span>;
  readonly #start: number;
  readonly oddNumbers: readonly DataPath[];

  constructor(
    source: TextFile,
    spans: ReadonlyMap<string, Span>,
    start: number,
    oddNumbers: readonly DataPath[],
  ) {
    this.#source = source;
    this.#spans = spans;
    this.#start = start;
    this.oddNumbers = oddNumbers;
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

  restOfLine(path: DataPath): string {
    const span = this.#spans.get(pointer(path));
    return span ? (/^.*/.exec(this.#source.text.slice(span[3], span[3] + 200))?.[0] ?? '') : '';
  }
}

function pointer(path: DataPath): string {
  return path.map((part) => `/${String(part)}`).join('');
}

interface Refused {
  readonly start: number;
  readonly finding: Finding;
}

/** Leading noughts, hexadecimal and octal: no two versions of YAML read them alike. */
const oddNotation = /^[-+]?0[0-9xo]/;

/** Walks a document once: where everything stands, and the first thing in it that entries do not use. */
class Collector {
  readonly spans = new Map<string, Span>();
  readonly repeated = new Map<number, readonly [number, number]>();
  readonly oddNumbers: DataPath[] = [];
  refused: Refused | undefined;
  readonly #path: (string | number)[] = [];
  readonly #source: TextFile;
  readonly #offset: number;

  constructor(source: TextFile, offset: number) {
    this.#source = source;
    this.#offset = offset;
  }

  visit(node: Node, at: string, keyStart: number, keyEnd: number): void {
    const start = this.#offset + (node.range?.[0] ?? 0);
    const end = this.#offset + (node.range?.[1] ?? node.range?.[0] ?? 0);
    this.spans.set(at, [keyStart, keyEnd, start, end]);
    this.#refuseShorthand(node, start, end);
    if (isScalar(node)) {
      if (typeof node.value === 'number' && oddNotation.test(node.source ?? ''))
        this.oddNumbers.push([...this.#path]);
    } else if (isMap(node)) this.#visitMap(node, at);
    else if (isSeq(node)) {
      node.items.forEach((item, index) => {
        if (!item) return;
        this.#path.push(index);
        this.visit(item as Node, `${at}/${index}`, -1, -1);
        this.#path.pop();
      });
    }
  }

  #visitMap(map: YAMLMap, at: string): void {
    for (const pair of map.items) {
      if (!isScalar(pair.key)) continue;
      const key = pair.key as Node & { value: unknown };
      const from = this.#offset + (key.range?.[0] ?? 0);
      const to = this.#offset + (key.range?.[1] ?? 0);
      const child = `${at}/${String(key.value)}`;
      const before = this.spans.get(child);
      if (before) this.repeated.set(from, [before[0], before[1]]);
      if (map.flow) this.#refuseComma(pair, from, to);
      this.#path.push(String(key.value));
      if (pair.value) this.visit(pair.value as Node, child, from, to);
      else this.spans.set(child, [from, to, to, to]);
      this.#path.pop();
    }
  }

  /** `&name`, `*name` and `!name`: links and types of YAML, and what text becomes that begins with these signs. */
  #refuseShorthand(node: Node, start: number, end: number): void {
    const { text } = this.#source;
    if (isAlias(node)) {
      this.#refuse(
        start,
        end,
        linkMessage,
        'Write the value out in each place; if it is text that begins with *, put it in quotes.',
      );
    } else if ('anchor' in node && node.anchor) {
      const at = text.lastIndexOf(`&${node.anchor}`, start);
      this.#refuse(
        at < 0 ? start : at,
        at < 0 ? end : at + 1 + node.anchor.length,
        linkMessage,
        'Write the value out in each place; if it is text that begins with &, put it in quotes.',
      );
    } else if (node.tag !== undefined) {
      const at = text.lastIndexOf('!', start);
      this.#refuse(
        at < 0 ? start : at,
        start,
        'A word that begins with ! is taken for a type of value, and such types are not used in entries.',
        'Take it out; if it is text that begins with !, put it in quotes.',
      );
    }
  }

  /** Inside braces a comma begins a new field, so `{ volts: 14,4 }` has a field named 4. */
  #refuseComma(pair: Pair, from: number, to: number): void {
    const { text } = this.#source;
    const isEmpty = !pair.value || (isScalar(pair.value) && pair.value.value === null);
    if (!isEmpty || text.charAt(from - 1) !== ',') return;
    const whole = /[-+]?\d+,$/.exec(text.slice(Math.max(0, from - 40), from))?.[0];
    const decimals = /^\d+/.exec(text.slice(from, to))?.[0];
    if (whole === undefined || decimals === undefined) return;
    const written = `${whole}${decimals}`;
    const asThousands = decimals.length === 3 && !/^[-+]?0,$/.test(whole);
    this.#refuse(
      from - whole.length,
      to,
      `The number ${written} has a comma in it, and a comma ends a value inside { }.`,
      `Use a point for the decimals: ${written.replace(',', '.')}${
        asThousands ? `; or, if the comma parts thousands, leave it out: ${written.replace(',', '')}` : ''
      }.`,
    );
  }

  #refuse(start: number, end: number, message: string, help: string): void {
    if (this.refused && this.refused.start <= start) return;
    const place = this.#source.place(start, end);
    this.refused = {
      start,
      finding: { rule: 'syntax', severity: 'error', place, message, help, related: [] },
    };
  }
}
