/** What a table says before any value is given: gaps, overlaps, rules and inputs that do nothing, thresholds too fine. */
export {
  type AnalysisSettings,
  analyseTable,
  fineThresholds,
  gapBoxes,
  type Part,
  type TableAnalysis,
} from './analyse.ts';
export type { Box } from './box.ts';
export type { DeadRule } from './dead-rules.ts';
export type { FineThresholds } from './fine-thresholds.ts';
export type { GapBoxes } from './gap-boxes.ts';
export type { Gap } from './gaps.ts';
export type { IdleInput } from './idle-inputs.ts';
export type { Mergeable } from './mergeable.ts';
export type { Overlap } from './overlaps.ts';
export type { Subsumed } from './subsumed.ts';
