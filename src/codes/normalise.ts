/** The canonical form of a code: what remains of it when it does not matter how it was typed. */
import { longestCompared } from './constants.ts';

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

const ending = new RegExp(`(?<=.)(?:\\.(?:${fileEndings.join('|')}))+$`, 'u');

/** White space, every dash (Unicode Pd and the minus sign), dot, underscore, slashes, invisible characters. */
const separators = /[\s\p{Pd}\u2212._/\\\u2044\p{Cf}]+/gu;

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

/**
 * The canonical form with the letters as the screen shows them, small or capital: as long as the canonical one,
 * character by character. Where case changes more than case (ß), it is the canonical form.
 */
export function shownForm(code: string): string {
  const canonical = canonicalCode(code);
  const plain = code.normalize('NFKC').trim();
  const endless = plain.slice(0, plain.length - (ending.exec(plain.toUpperCase())?.[0].length ?? 0));
  const shown = endless.replace(separators, '').normalize('NFKC');
  return shown.length === canonical.length && shown.toUpperCase() === canonical ? shown : canonical;
}

/** How many characters at the start are leading zeros, a hexadecimal `0X` among them: `0X07E8` gives 3. */
export function leadingZeros(canonical: string): number {
  return /^(?:0X)?0*/.exec(canonical)?.[0].length ?? 0;
}

/** How many leading zeros of a typed text stand before a code: -1 for nothing but zeros, which are those of no code. */
export function zerosBefore(typed: string): number {
  const zeros = leadingZeros(typed);
  return zeros < Math.min(typed.length, longestCompared) ? zeros : -1;
}

/**
 * Where the character at `index` of the canonical form stands in the code as displayed, counting every
 * displayed character from 1, separators included. An index past the end gives the place after the last.
 */
export function displayedPosition(displayed: string, index: number): number {
  let position = 0;
  let canonicalLength = 0;
  for (const character of displayed) {
    position += 1;
    canonicalLength += canonicalCode(character).length;
    if (canonicalLength > index) return position;
  }
  return position + 1;
}
