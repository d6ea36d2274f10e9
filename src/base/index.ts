/** The base: files of a content folder → positions kept → validated → linked into one typed, immutable Base. */
export { type Base, byOrder, Entry, type EntryMap, readingsOfProfile, setAsideFor } from './base.ts';
export { placeInDirective, placeOfAddress, placeOfNode } from './body-places.ts';
export { CannotRun, type ContentFiles, FolderFiles, linkFinding } from './content-folder.ts';
export {
  attributeOf,
  type DirectiveName,
  type DirectiveNode,
  directiveNames,
  directivesOf,
  isDirective,
  knownName,
  labelWords,
  plainText,
  walk,
} from './directives.ts';
export { compareFindings, type Finding, type Place, type RelatedPlace, type Severity } from './finding.ts';
export { LazyMap } from './lazy-map.ts';
export type { Link } from './link.ts';
export { allEntries, isKind, linkedKinds, linksOf } from './links.ts';
export { digestOf, MapMemory, type Memory, noMemory, remembered } from './memory.ts';
export { MemoryFiles } from './memory-files.ts';
export { nearest } from './nearest.ts';
export { type BaseReading, readBase } from './read.ts';
export { type BenchReading, ReadingTable } from './readings.ts';
export { type PageKind, type Target, targetOf } from './targets.ts';
export { TextFile } from './text-file.ts';
export type { DataPath } from './yaml.ts';
