/** What a DMN file holds, as far as it is decided here: decisions by tables or by expressions, and what they need. */

import type { FileFault, Span } from '../file-fault.ts';
import type { Aggregation, HitPolicy, Value, ValueType } from '../table.ts';

/** The versions of DMN that are read, by the namespace of their elements (OMG, DMN 1.2 to 1.5, annex of schemas). */
export const namespaces: Readonly<Record<string, DmnVersion>> = {
  'http://www.omg.org/spec/DMN/20180521/MODEL/': '1.2',
  'https://www.omg.org/spec/DMN/20191111/MODEL/': '1.3',
  'https://www.omg.org/spec/DMN/20211108/MODEL/': '1.4',
  'https://www.omg.org/spec/DMN/20230324/MODEL/': '1.5',
};
export type DmnVersion = '1.2' | '1.3' | '1.4' | '1.5';

/** The namespace of what DMN has no place for: units, whole numbers, values that may be missing. */
export const ownNamespace = 'urn:readback:decision-tables';

/** The annotation column that keeps the ids of rules, which in XML have to differ across tables. */
export const ruleIdColumn = 'rule id';
export const saysColumn = 'says';

/** A type in FEEL: one a column of a table can have, one that is evaluated only, or none given. */
export type FeelType =
  | ValueType
  | { readonly kind: 'time' | 'date and time' | 'duration' }
  | { readonly kind: 'any' }
  /** Parts or lists: cannot be given from outside. */
  | { readonly kind: 'structure'; readonly name: string };

export interface FeelText {
  readonly text: string;
  readonly span: Span;
}

export interface DmnInput {
  readonly id: string;
  /** The name expressions use. */
  readonly name: string;
  readonly label: string;
  readonly type: FeelType;
  readonly mayBeMissing: boolean;
  readonly span: Span;
}

export interface DmnDecision {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly question: string | undefined;
  /** XML ids of what it needs. */
  readonly requires: readonly { readonly id: string; readonly span: Span }[];
  readonly logic: DmnTable | DmnExpression;
  readonly span: Span;
}

export interface DmnExpression extends FeelText {
  readonly kind: 'expression';
}

export interface DmnTable {
  readonly kind: 'table';
  readonly hitPolicy: HitPolicy;
  readonly aggregation: Aggregation | undefined;
  readonly inputs: readonly DmnColumn[];
  readonly outputs: readonly DmnOutput[];
  readonly rules: readonly DmnRule[];
  readonly span: Span;
}

export interface DmnColumn {
  readonly label: string;
  readonly expression: FeelText;
  readonly type: FeelType;
  readonly mayBeMissing: boolean;
}

export interface DmnOutput {
  /** Empty where the only output has no name: then the result is the value itself. */
  readonly name: string;
  readonly label: string;
  readonly type: FeelType;
  readonly priorities: readonly Value[];
  readonly otherwise: FeelText | undefined;
  readonly span: Span;
}

export interface DmnRule {
  /** What it is called: its “rule id” annotation, else its XML id, else its number, counted from 1. */
  readonly id: string;
  readonly tests: readonly FeelText[];
  readonly results: readonly FeelText[];
  /** What the annotations say, the “rule id” left out. */
  readonly says: string | undefined;
  readonly span: Span;
}

export interface DmnFile {
  readonly name: string;
  readonly version: DmnVersion;
  readonly inputs: readonly DmnInput[];
  readonly decisions: readonly DmnDecision[];
  /** What is in the file but cannot be decided here; no decision that needs it can be. */
  readonly refused: readonly (FileFault & { readonly id: string; readonly name: string })[];
}
