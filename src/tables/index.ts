/** Decision tables (OMG DMN): their tests read, evaluated and analysed. Pure. */
export * from './analysis/index.ts';
export { decided } from './decided.ts';
export type { EntryFault, EntryPath } from './entry/entry-fault.ts';
export { type EntryTable, tableOfEntry, writtenTable } from './entry/table-of-entry.ts';
export { writtenTest } from './entry/written-test.ts';
export { evaluateTable, fittingRules } from './evaluate.ts';
export { evaluateWithin } from './evaluate-within.ts';
export { cutTable, gridOf, isAnalysable } from './grid/cut-table.ts';
export { describeBox, describeSet } from './grid/describe.ts';
export { describeGiven } from './grid/describe-given.ts';
export { testText } from './grid/describe-test.ts';
export type { Answer, Decided } from './hit-policy.ts';
export { type ReadTable, readTable } from './read-table.ts';
export {
  type Aggregation,
  aggregations,
  type Cell,
  type Given,
  type HitPolicy,
  hitPolicies,
  type Table,
  type TableFault,
  type TableInput,
  type TableOutput,
  type TableRule,
  type Value,
  type ValueType,
  type WrittenRule,
  type WrittenTable,
} from './table.ts';
export { answerKey, type Known, type Within } from './within.ts';
