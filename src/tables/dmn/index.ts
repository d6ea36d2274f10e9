/** Decision tables to and from DMN XML (OMG DMN 1.2 to 1.5), and decisions that need other decisions. Pure. */

export { CannotExport, type FileFault, type Span, UnusableFile } from '../file-fault.ts';
export { type ChainAnswer, decideDmn, neededBy } from './decide-chain.ts';
export { type DmnExport, exportDmn } from './export.ts';
export type { DmnDecision, DmnFile, DmnInput, DmnTable, FeelType } from './model.ts';
export { feelName, idFor, idOfFeelName, likeName, renamed } from './names.ts';
export { readDmn } from './read-dmn.ts';
export { type TableOfDecision, tableOfDecision } from './to-table.ts';
