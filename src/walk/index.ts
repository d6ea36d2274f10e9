/** A walk through a sequence: where one can be, where each answer leads, and what a running count says. */

export { beginWords, endWords, momentWords } from './moments.ts';
export { type Progress, progressOf, progressText } from './progress.ts';
export { phaseAt, type TimerPhase, type Timing, timerWords, timingOf } from './timer.ts';
export { type WalkPoint, walkPoints } from './walk-points.ts';
