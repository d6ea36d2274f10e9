/** Decision tables to and from DMN XML (OMG DMN 1.2 to 1.5), and decisions that need other decisions. Pure. */

export { CannotExport, type FileFault, type Span, UnusableFile } from '../file-fault.ts';
export { type ChainAnswer, decideDmn, neededBy } from './decide-chain.ts';
export { withEntryIds } from './entry-ids.ts';
export { type DmnExport, exportDmn } from './export.ts';
export type { PlainValue } from './expression.ts';
export { decisionFaults } from './expression-faults.ts';
export { literalOf } from './feel-text.ts';
export type { DmnDecision, DmnFile, DmnInput, DmnTable, FeelType } from './model.ts';
export { feelName, idFor, idOfFeelName, likeName, renamed } from './names.ts';
export { valuesByPriority } from './priorities.ts';
export { readDmn } from './read-dmn.ts';
export { type TableOfDecision, tableOfDecision } from './to-table.ts';
