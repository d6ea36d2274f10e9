/** A text file with its lines counted once: turns offsets into places a person can find. */
import type { Place } from './finding.ts';
import { digestOf } from './memory.ts';

export class TextFile {
  readonly file: string;
  #content: string | Uint8Array;
  #lineStarts: readonly number[] | undefined;
  #digest: string | undefined;

  /** @param content text, or bytes known to be UTF-8: they become text when it is asked for. */
  constructor(file: string, content: string | Uint8Array) {
    this.file = file;
    this.#content = content;
  }

  /** The text without a byte-order mark; CRLF line ends are kept as they are. */
  get text(): string {
    if (typeof this.#content !== 'string') {
      // The digest is that of the bytes, whichever of the two is asked for first.
      this.#digest ??= digestOf(this.#content);
      this.#content = new TextDecoder('utf-8', { ignoreBOM: true }).decode(this.#content);
    }
    if (this.#content.startsWith('\uFEFF')) this.#content = this.#content.slice(1);
    return this.#content;
  }

  /** A digest of the content. */
  get digest(): string {
    this.#digest ??= digestOf(this.#content);
    return this.#digest;
  }

  /** The place from offset `start` up to, not including, `end` (UTF-16 units, as strings count). */
  place(start: number, end: number = start): Place {
    const from = this.#lineAndColumn(start);
    const to = this.#lineAndColumn(Math.max(start, end));
    return {
      file: this.file,
      line: from.line,
      column: from.column,
      endLine: to.line,
      endColumn: to.column,
    };
  }

  /** How many lines there are, the empty one after a last line end included. */
  get lineCount(): number {
    return this.#starts().length;
  }

  /** The text of a 1-based line without its line end; empty beyond the last line. */
  lineText(line: number): string {
    const starts = this.#starts();
    const start = starts[line - 1];
    if (start === undefined) return '';
    return this.text.slice(start, starts[line] ?? this.text.length).replace(/\r?\n$/, '');
  }

  #lineAndColumn(offset: number): { line: number; column: number } {
    const starts = this.#starts();
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
  }

  #starts(): readonly number[] {
    if (this.#lineStarts) return this.#lineStarts;
    const starts = [0];
    for (let at = this.text.indexOf('\n'); at !== -1; at = this.text.indexOf('\n', at + 1))
      starts.push(at + 1);
    this.#lineStarts = starts;
    return starts;
  }
}
