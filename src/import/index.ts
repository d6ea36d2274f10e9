/** A shop’s spreadsheet → readings, session and profiles, with everything that is not understood named. */
export {
  blankSheetCsv,
  type SheetLine,
  type SheetPlan,
  type SheetUnit,
  sheetPlan,
} from './blank-sheet.ts';
export { cellName, columnLetters, columnNumber, quoted, type Sheet, UnusableSheet } from './cell.ts';
export { headKey, type SaidColumns } from './columns.ts';
export { type Difference, isSame, readingsDifference } from './difference.ts';
export { entryFiles } from './entries.ts';
export { type Fact, saidFact } from './facts.ts';
export { type ImportSettings, importSheet, type Question, type SheetImport } from './import-sheet.ts';
export type { DecimalSign } from './numbers.ts';
export { readSheet } from './read-sheet.ts';
export type { SheetReading } from './repeats.ts';
export { type Role, roleHelp, roleNamed, roleText } from './role.ts';
export type { RowFault } from './row-faults.ts';
