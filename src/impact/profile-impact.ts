/** What a change does to the answers about one profile. */
import type { Cause } from './causes.ts';
import type { VerdictChange } from './plan-changes.ts';
import type { TableAnswerChange } from './table-changes.ts';
import type { ValueChange } from './value-changes.ts';

/** What is known of a profile beside its values. */
export const factNames = ['system', 'origin', 'boost-behaviour', 'silent-outputs'] as const;
export type FactName = (typeof factNames)[number];

export interface FactChange {
  readonly fact: FactName;
  /** As entries and results are coded; outputs by their names, with commas. */
  readonly before: string;
  readonly now: string;
}

/** Profiles that put out the same as this one, it aside; ids now. */
export interface TwinChange {
  readonly before: readonly string[];
  readonly now: readonly string[];
}

export interface ProfileImpact {
  /** The id now (before, where it is gone). */
  readonly profile: string;
  /** The id before, where it was another. */
  readonly formerly: string | undefined;
  readonly code: string;
  /** The code as it was written, where it was another. */
  readonly formerCode: string | undefined;
  readonly kind: 'new' | 'changed' | 'gone';
  /** Plans of plans/ and combinations whose verdict flipped. */
  readonly verdicts: readonly VerdictChange[];
  /** Tables that answer differently. */
  readonly tables: readonly TableAnswerChange[];
  /** Every value that differs; those that `hasMoved` say something else. */
  readonly values: readonly ValueChange[];
  readonly facts: readonly FactChange[];
  readonly twins: TwinChange | undefined;
}

/** An answer that became another, with the changed entries it became so by. */
export type Flip =
  | ({ readonly of: 'plan' } & VerdictChange)
  | ({ readonly of: 'table' } & TableAnswerChange)
  | ({ readonly of: 'value' } & ValueChange);

/**
 * The answers that became others: verdicts, answers of tables, and values that moved beyond their uncertainty or are
 * known no more. What became known only now is none: nobody was told otherwise.
 */
export function flipsOf({ verdicts, tables, values }: ProfileImpact): Flip[] {
  return [
    ...verdicts.map((one): Flip => ({ of: 'plan', ...one })),
    ...tables.map((one): Flip => ({ of: 'table', ...one })),
    ...values
      .filter(({ hasMoved, before }) => hasMoved && before)
      .map((one): Flip => ({ of: 'value', ...one })),
  ];
}

/** Whether an impact says anything that a rider would read differently. */
export function saysSomething(one: ProfileImpact): boolean {
  return (
    one.kind !== 'changed' ||
    one.formerCode !== undefined ||
    one.twins !== undefined ||
    one.facts.length > 0 ||
    one.verdicts.length > 0 ||
    one.tables.length > 0 ||
    one.values.length > 0
  );
}

/** Nothing but that a profile is there, or is no more. */
export function appearance(kind: 'new' | 'gone', profile: string, code: string): ProfileImpact {
  return {
    ...{ profile, formerly: undefined, code, formerCode: undefined, kind },
    ...{ verdicts: [], tables: [], values: [], facts: [], twins: undefined },
  };
}

/** Causes once each. */
export function causeKey({ kind, id }: Cause): string {
  return `${kind}/${id}`;
}
