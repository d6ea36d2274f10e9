/** The bytes of a file → a sheet, by what they are, whatever the file is called. */
import { mostSheetBytes } from '../base/index.ts';
import { type Sheet, UnusableSheet } from './cell.ts';
import { csvSheet } from './csv-sheet.ts';
import { fileText } from './file-text.ts';
import { xlsxSheet } from './xlsx/index.ts';

/**
 * @param name the sheet of a workbook.
 * @throws UnusableSheet where it is neither CSV nor XLSX, or cannot be read.
 */
export function readSheet(bytes: Uint8Array, name: string | undefined): Sheet {
  const [a, b, c, d] = bytes;
  if (a === 0x50 && b === 0x4b) return xlsxSheet(bytes, name);
  if (a === 0xd0 && b === 0xcf && c === 0x11 && d === 0xe0) {
    throw new UnusableSheet(
      'This is a workbook of the old kind (.xls), or one locked with a password.',
      'Open it in the spreadsheet and save it as .xlsx without a password, or as CSV (UTF-8).',
    );
  }
  if (bytes.length > mostSheetBytes) {
    throw new UnusableSheet(
      `The file has ${Math.ceil(bytes.length / 1024 ** 2)} MB; the most is ${mostSheetBytes / 1024 ** 2} MB.`,
      'Split it into several sessions.',
    );
  }
  if (name !== undefined) {
    throw new UnusableSheet(
      '--sheet names a sheet of a workbook, and this file is none.',
      'Leave --sheet out.',
    );
  }
  const { text, note } = fileText(bytes);
  const sheet = csvSheet(text);
  if (sheet.rows.length === 0)
    throw new UnusableSheet('The file is empty.', 'Look whether it is the right one.');
  return { ...sheet, notes: [...(note === undefined ? [] : [note]), ...sheet.notes] };
}
