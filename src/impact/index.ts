/** What a change of the content does to its answers: two states of it compared, with what each difference comes from. Pure. */
export type { Cause } from './causes.ts';
export { decisiveChanges } from './decisive.ts';
export type { EntryChange } from './entry-changes.ts';
export { evidenceFor } from './evidence.ts';
export { type Change, changeOf, type Impact } from './impact.ts';
export { placeOfCause } from './place-of-cause.ts';
export type { VerdictChange } from './plan-changes.ts';
export type { Combination, PlanGrid } from './plan-grid.ts';
export {
  causeKey,
  type FactChange,
  type Flip,
  flipsOf,
  type ProfileImpact,
  saysSomething,
} from './profile-impact.ts';
export { type Rename, States } from './states.ts';
export type { RuleEdits, TableAnswerChange } from './table-changes.ts';
export type { ComparedValue, ValueChange } from './value-changes.ts';
export { normalisedDifference } from './value-changes.ts';
