/** Measurement: readings → points → characteristics, each with its uncertainty. Pure computation. */
export * from './agreement.ts';
export { type Biquad, bentRatio, biquadDb, biquadOf } from './biquad.ts';
export * from './characterise.ts';
export * from './combine.ts';
export { type ComparableOutput, compareOutputs, type OutputComparison } from './compare-outputs.ts';
export * from './consistency.ts';
export * from './distortion.ts';
export { highPassDb, lowPassDb, lowShelfDb, peakDb } from './filter-levels.ts';
export * from './format.ts';
export { pointVolts } from './from-points.ts';
export { greatestBoost } from './greatest-boost.ts';
export * from './group.ts';
export { headlineValue } from './headline.ts';
export * from './level.ts';
export * from './main-conditions.ts';
export { neededFor } from './needed-for.ts';
export * from './point.ts';
export * from './points.ts';
export * from './propagate.ts';
export {
  type Filter,
  type FilterKind,
  filterKinds,
  type Prototype,
  prototypeDb,
  prototypeOf,
  shelfQ,
} from './prototype.ts';
export * from './quantity.ts';
export * from './response.ts';
export * from './session-agreement.ts';
export { frontChannel } from './session-points.ts';
export * from './third-octave.ts';
export { leastBoostDb } from './traits/bass.ts';
export { mutedBelowDb } from './traits/channels.ts';
export * from './twins.ts';
export * from './uncertainty.ts';
export * from './value-under.ts';
export { valuesOfOutput } from './values-of-output.ts';
