/** What is wrong with a file, and where. */

/** A stretch of a file’s text: offsets in UTF-16 units, the end exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface FileFault {
  readonly span: Span;
  readonly message: string;
  readonly help: string;
}

/** Thrown where a file cannot be read, or what it holds not be decided. */
export class UnusableFile extends Error {
  readonly span: Span;
  readonly help: string;

  constructor(span: Span, message: string, help: string) {
    super(message);
    this.span = span;
    this.help = help;
  }

  get fault(): FileFault {
    return { span: this.span, message: this.message, help: this.help };
  }
}

/** Thrown where a table cannot be put into a form. */
export class CannotExport extends Error {
  readonly help: string;

  constructor(message: string, help: string) {
    super(message);
    this.help = help;
  }
}
