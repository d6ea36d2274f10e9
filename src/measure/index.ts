/** Measurement: readings → points → characteristics, each with its uncertainty. Pure computation. */
export * from './agreement.ts';
export * from './characterise.ts';
export * from './combine.ts';
export * from './consistency.ts';
export * from './distortion.ts';
export * from './format.ts';
export * from './group.ts';
export * from './level.ts';
export * from './main-conditions.ts';
export * from './points.ts';
export * from './quantity.ts';
export * from './response.ts';
export * from './third-octave.ts';
export { leastBoostDb } from './traits/bass.ts';
export { mutedBelowDb } from './traits/channels.ts';
export * from './twins.ts';
export * from './uncertainty.ts';
