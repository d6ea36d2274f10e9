/** What a decision table is: OMG DMN 1.3, clause 8, as data. */
import type { ValueSet } from './sets/value-set.ts';

/** A FEEL value as tables use it. A date is its ISO 8601 text; `null` stands for a value that is not known. */
export type Value = number | string | boolean | null;

/** What a column holds. `whole`: whole numbers only, as volume steps are. `text`: any text. */
export type ValueType =
  | {
      readonly kind: 'number';
      readonly unit?: string | undefined;
      readonly whole?: boolean | undefined;
      readonly least?: number | undefined;
      readonly most?: number | undefined;
    }
  | { readonly kind: 'date'; readonly least?: string | undefined; readonly most?: string | undefined }
  | { readonly kind: 'choice'; readonly values: readonly string[] }
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' };

/** Which of the rules that fit give the answer (DMN 1.3, 8.2.10). */
export const hitPolicies = [
  'unique',
  'any',
  'priority',
  'first',
  'output order',
  'rule order',
  'collect',
] as const;
export type HitPolicy = (typeof hitPolicies)[number];

/** What `collect` makes of the outputs it collects; without one they are a list (DMN 1.3, 8.2.10). */
export const aggregations = ['sum', 'min', 'max', 'count'] as const;
export type Aggregation = (typeof aggregations)[number];

export interface TableInput {
  /** The name values are given under: lower-case words joined by hyphens in entries, any FEEL name in DMN. */
  readonly id: string;
  readonly label: string;
  readonly type: ValueType;
  /** Whether the value may be missing, as of a profile that has not been measured: `null` then is one more value. */
  readonly mayBeMissing: boolean;
}

export interface TableOutput {
  readonly id: string;
  readonly label: string;
  readonly type: ValueType;
  /** Answers in the order of their priority, highest first; what `priority` and `output order` go by. */
  readonly priorities: readonly Value[];
  /** What it is where no rule fits; undefined: there is no answer then. */
  readonly otherwise: Value | undefined;
}

/** One unary test (DMN 1.3, 7.3.14): the text of a cell and, where it is a simple one, the values it lets through. */
export interface Cell {
  readonly text: string;
  /** Undefined where the test is more than S-FEEL (an expression): it can be evaluated, but not analysed. */
  readonly set: ValueSet | undefined;
}

export interface TableRule {
  /** Unlike that of any other rule of the table. */
  readonly id: string;
  /** One a table input, in their order. */
  readonly cells: readonly Cell[];
  /** One a table output, in their order. */
  readonly results: readonly Value[];
}

export interface Table {
  readonly name: string;
  readonly hitPolicy: HitPolicy;
  readonly aggregation: Aggregation | undefined;
  readonly inputs: readonly TableInput[];
  readonly outputs: readonly TableOutput[];
  readonly rules: readonly TableRule[];
}

/** A table as it was written, before its tests are read: what entries, DMN files and CSV files are turned into. */
export interface WrittenTable extends Omit<Table, 'rules'> {
  readonly rules: readonly WrittenRule[];
}

export interface WrittenRule {
  readonly id: string;
  /** One a table input, in their order: a unary test in FEEL, `-` for any value. */
  readonly tests: readonly string[];
  readonly results: readonly Value[];
}

/** What is wrong with a written table, in the words of whoever wrote it. */
export interface TableFault {
  /** Index into the rules; undefined where it is about the table as a whole. */
  readonly rule: number | undefined;
  /** Index into the inputs, or the outputs where `in` says so. */
  readonly column: number | undefined;
  readonly in: 'inputs' | 'outputs' | 'hit policy' | 'aggregation';
  readonly message: string;
  readonly help: string;
}

/** The values given for a table’s inputs by their id; one left out is not known. */
export type Given = Readonly<Record<string, Value | undefined>>;
