/** Decision tables to and from DMN XML (OMG DMN 1.2 to 1.5), and decisions that need other decisions. Pure. */

export { decideDmn, neededBy } from './decide-chain.ts';
export { withEntryIds } from './entry-ids.ts';
export { type DmnExport, exportDmn } from './export.ts';
export { decisionFaults } from './expression-faults.ts';
export type { DmnDecision, DmnFile, FeelType } from './model.ts';
export { feelName, idFor, idOfFeelName, likeName } from './names.ts';
export { valuesByPriority } from './priorities.ts';
export { readDmn } from './read-dmn.ts';
export { tableOfDecision } from './to-table.ts';
