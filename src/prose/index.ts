/** Prose: what Markdown bodies say in numbers, and what their directives stand for. */
export { type ElectricalNumber, electricalNumbers, isElectricalUnit } from './electrical.ts';
export { alignedOffsets, type Flow, flowsOf } from './flow.ts';
export { type Heading, headingsOf, sectionIds } from './headings.ts';
export { limitNames } from './limits.ts';
export { type Problem, type Resolution, resolveDirective } from './resolve.ts';
