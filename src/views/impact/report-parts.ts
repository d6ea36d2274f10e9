/** What a report is made of, whatever it is written as. */

/** A piece of a line: prose, or a name to be set as it is written (a code, an id, a path). */
export type Piece = string | { readonly code: string };

export interface ReportItem {
  readonly title: readonly Piece[];
  readonly lines: readonly (readonly Piece[])[];
}

export interface ReportSection {
  readonly title: string;
  readonly items: readonly ReportItem[];
}
