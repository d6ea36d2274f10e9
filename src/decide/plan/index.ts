/** Plans: what is planned held against a profile, the verdict by the shop’s table, the arithmetic line by line. Pure. */
export * from './bandwidth.ts';
export * from './carry-over.ts';
export * from './changes.ts';
export * from './channels.ts';
export { compilePolicy, policyOf } from './compile-policy.ts';
export type { Correction } from './equaliser/corrected.ts';
export { correction } from './equaliser/correction.ts';
export { type EqualiserLimits, mostFilters } from './equaliser/limits.ts';
export type { Correctable } from './equaliser/to-correct.ts';
export { usualCorrection } from './equaliser/usual.ts';
export * from './fuse.ts';
export * from './gain-target.ts';
export * from './headroom.ts';
export * from './hearing.ts';
export * from './input-match.ts';
export { keeps, verdictWithin } from './judge.ts';
export { type JudgedPlan, judgePlan, suitableProfiles } from './judged-plan.ts';
export type { ArithmeticLine, Given, Refusal } from './line.ts';
export { type PlanPolicy, type ReadPolicy, usualPolicy } from './policy.ts';
export {
  type Amplifier,
  type PlanQuery,
  type Purchase,
  purchases,
  type Speaker,
  usualQuery,
} from './query.ts';
export { type Catalogue, type QueryFault, queryFields, readQuery } from './read-query.ts';
export * from './report.ts';
export { type Difference, sideBySide } from './side-by-side.ts';
export * from './speakers.ts';
export { type Stage, type StagedPlan, stagedPlan } from './stages.ts';
export * from './steps.ts';
export * from './supply.ts';
export { type PlanTerms, termsOfPlan } from './terms.ts';
export { termsOfQuery } from './terms-of-query.ts';
export * from './wire.ts';
export {
  type Corrects,
  correctionSection,
  type Section,
  type SectionId,
  sectionIds,
  workings,
} from './workings.ts';
export { type WrittenLine, written } from './written.ts';
