/** Decisions: a profile's computed output held against what a rider plans. Pure. */
export { behindInput } from './behind-input.ts';
export { type ClaimComparison, claimsAgree, compareClaim, type ValueClaim } from './claim.ts';
export { planFacts } from './plan/facts.ts';
export * from './plan/index.ts';
export { judge, knownByPolicy } from './plan/judge.ts';
export { answerPlan } from './plan-answer.ts';
export { type JudgedProfile, knownOfProfile, numberBehind } from './table-given.ts';
export { type PlanAnswer, type Reason, type Verdict, verdicts } from './verdict.ts';
export {
  fittedTo,
  looksLike,
  nextQuestion,
  type SightAnswer,
  type SightAnswers,
  type SightedUnit,
  type SightQuestion,
  unsure,
} from './which-unit.ts';
