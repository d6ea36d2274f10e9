/** The arithmetic of a plan: every result a line with its formula, values, uncertainty and sources. Pure. */
export * from './bandwidth.ts';
export * from './carry-over.ts';
export * from './channels.ts';
export * from './equaliser/correction.ts';
export type { EqualiserLimits } from './equaliser/curve.ts';
export * from './fuse.ts';
export * from './gain-target.ts';
export * from './headroom.ts';
export * from './hearing.ts';
export * from './input-match.ts';
export type { ArithmeticLine, Given, Refusal } from './line.ts';
export * from './speakers.ts';
export * from './steps.ts';
export * from './supply.ts';
export * from './wire.ts';
export { type WrittenLine, written } from './written.ts';
