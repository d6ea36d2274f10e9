/** The base: files of a content folder → positions kept → validated → linked into one typed, immutable Base. */
export { type Base, byOrder, Entry, type EntryMap, readingsOfProfile, setAsideFor } from './base.ts';
export { benchSourceId } from './bench-source-id.ts';
export { placeInDirective, placeOfAddress, placeOfNode } from './body-places.ts';
export {
  CannotRun,
  type ContentFiles,
  decoded,
  FolderFiles,
  linkFinding,
  mostSheetBytes,
  RereadFiles,
} from './content-folder.ts';
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
export { entryLineWidth, entryText, entryYaml, schemaComment } from './entry-text.ts';
export { familyNamed } from './family-named.ts';
export { compareFindings, type Finding, type Place, type RelatedPlace, type Severity } from './finding.ts';
export { LazyMap } from './lazy-map.ts';
export type { Link } from './link.ts';
export { allEntries, fileOfEntry, isKind, linkedKinds, linksOf, noSuchEntry } from './links.ts';
export { digestOf, MapMemory, type Memory, noMemory, remembered } from './memory.ts';
export { MemoryFiles } from './memory-files.ts';
export { nearest } from './nearest.ts';
export { OverlaidFiles } from './overlaid-files.ts';
export { codeSlug, profileId } from './profile-id.ts';
export { type BaseReading, isEntryId, readBase } from './read.ts';
export { type BenchReading, ReadingTable } from './readings.ts';
export { valueAt } from './schema-walk.ts';
export { familyOutputsDigest, profileOutputDigest, sheetDigest } from './scopes.ts';
export { eachRow, MisplacedQuote } from './sheet-rows.ts';
export { type PageKind, type Target, targetOf } from './targets.ts';
export { TextFile } from './text-file.ts';
export { type Validation, validate } from './validate.ts';
export type { DataPath, Positions } from './yaml.ts';
