/** The canonical form of a code: what remains of it when it does not matter how it was typed. */

/**
 * Endings that a code takes with it when it is copied from a file name: dumps, settings, notes, pictures.
 * Common practice, no source. An ending of a known code is dropped too, so the two still meet.
 */
const fileEndings = [
  'BIN',
  'HEX',
  'DAT',
  'CFG',
  'INI',
  'TXT',
  'CSV',
  'JSON',
  'XML',
  'ZIP',
  'PNG',
  'JPG',
  'JPEG',
];

/** File endings at the end of a text in capitals, with something before them. */
export const ending = new RegExp(`(?<=.)(?:\\.(?:${fileEndings.join('|')}))+$`, 'u');

/** White space, every dash (Unicode Pd and the minus sign), dot, underscore, slashes, invisible characters. */
export const separators = /[\s\p{Pd}\u2212._/\\\u2044\p{Cf}]+/gu;

/** Most codes are this: no compatibility forms, no file endings, no separators but hyphens. */
const plainCode = /^[0-9A-Za-z-]*$/;

/**
 * The canonical form of a code: compatibility forms unified (Unicode NFKC: full-width letters, ligatures),
 * upper case, file endings and separators dropped. Leading zeros stay; matching forgives them.
 * Gives an empty string when nothing but separators was typed. Never throws.
 */
export function canonicalCode(text: string): string {
  if (plainCode.test(text)) return text.toUpperCase().replaceAll('-', '');
  // Lower case first: some capitals (ẞ) have no other way to the form their small letter takes.
  const folded = text.normalize('NFKC').toLowerCase().toUpperCase().normalize('NFKC').trim();
  return folded.replace(ending, '').replace(separators, '').normalize('NFKC');
}
