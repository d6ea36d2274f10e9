/** The bytes of a sheet as text, whichever encoding a spreadsheet saved it in. */
import { isUtf8 } from 'node:buffer';
import { UnusableSheet } from './cell.ts';

export interface FileText {
  readonly text: string;
  /** Said where it is not UTF-8. */
  readonly note: string | undefined;
}

/**
 * UTF-8 and UTF-16, by their byte-order mark or by what fits; else Windows-1252 (WHATWG Encoding Standard). Line ends
 * become LF.
 * @throws UnusableSheet where the bytes are no text.
 */
export function fileText(bytes: Uint8Array): FileText {
  const { encoding, note } = encodingOf(bytes);
  const text = new TextDecoder(encoding).decode(bytes).replace(/\r\n?/g, '\n');
  const nul = text.indexOf('\0');
  if (nul !== -1) {
    const line = text.slice(0, nul).split('\n').length;
    throw new UnusableSheet(
      `Line ${line} of the file holds a NUL, which no text has: the file is damaged, or it is no CSV.`,
      'Open it in the spreadsheet and save it again as CSV (UTF-8).',
    );
  }
  return { text, note };
}

function encodingOf(bytes: Uint8Array): { readonly encoding: string; readonly note: string | undefined } {
  const [first, second] = bytes;
  const utf16 = (encoding: string) => ({ encoding, note: 'The file is UTF-16 text.' });
  if (first === 0xff && second === 0xfe) return utf16('utf-16le');
  if (first === 0xfe && second === 0xff) return utf16('utf-16be');
  // Without a mark: letters and figures have an empty byte on one side all along.
  const start = bytes.subarray(0, 400);
  const empty = (offset: 0 | 1): number => start.filter((byte, at) => at % 2 === offset && byte === 0).length;
  if (start.length >= 8 && empty(1) > 0.4 * (start.length / 2) && empty(0) === 0) return utf16('utf-16le');
  if (start.length >= 8 && empty(0) > 0.4 * (start.length / 2) && empty(1) === 0) return utf16('utf-16be');
  if (isUtf8(bytes)) return { encoding: 'utf-8', note: undefined };
  return {
    encoding: 'windows-1252',
    note: 'The file is not UTF-8: it is read as Windows-1252. Look at accents, Ω and µ below; if they are wrong, save it again as CSV (UTF-8).',
  };
}
