/**
 * The shapes of everything a contributor writes and everything the commands print.
 * From these follow the TypeScript types, the JSON Schema files in `schemas/json/` and the messages of the check.
 */
export * from './characteristics.ts';
export * from './common.ts';
export * from './editor-words.ts';
export * from './entries/equipment.ts';
export * from './entries/exception.ts';
export * from './entries/family.ts';
export * from './entries/guide.ts';
export * from './entries/plan.ts';
export * from './entries/profile.ts';
export * from './entries/reading.ts';
export * from './entries/sequence.ts';
export * from './entries/session.ts';
export * from './entries/site.ts';
export * from './entries/source.ts';
export * from './entries/statement.ts';
export * from './entries/table.ts';
export * from './kinds.ts';
