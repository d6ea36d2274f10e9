/**
 * The one diagnostic of Readback, from the YAML parser to the reporters.
 * A finding says what is wrong, where, in the words of the person who can fix it, and what to do next.
 */

/** A stretch of a file: 1-based lines and columns (in UTF-16 units), the end exclusive. */
export interface Place {
  /** Path below the content folder, with forward slashes. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Another place that has to do with a finding: the reading it contradicts, the first use of a code. */
export interface RelatedPlace {
  readonly place: Place;
  readonly message: string;
}

/** SARIF 2.1.0 levels. `error` and `warning` fail the check; `note` is news. */
export type Severity = 'error' | 'warning' | 'note';

export interface Finding {
  /** The rule's id, such as `dangling-link`. */
  readonly rule: string;
  readonly severity: Severity;
  readonly place: Place;
  /** What is wrong, in one sentence. */
  readonly message: string;
  /** What to do next, in one sentence. */
  readonly help: string;
  readonly related: readonly RelatedPlace[];
}

/** Orders findings by file, then line, then column, then rule: the order they are always shown in. */
export function compareFindings(a: Finding, b: Finding): number {
  return (
    compareText(a.place.file, b.place.file) ||
    a.place.line - b.place.line ||
    a.place.column - b.place.column ||
    compareText(a.rule, b.rule) ||
    compareText(a.message, b.message)
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
