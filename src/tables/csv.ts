/** Decision tables as CSV, to be edited in a spreadsheet: a row a rule, a column an input or an output. */
export { rowsFromCsv, type TableOfCsv } from './csv-read.ts';
export { rowsToCsv } from './csv-write.ts';
