/** What the canonical form of a code is compared by: letters as shown, leading zeros, places on the display. */
import { canonicalCode, ending, separators } from './canonical-code.ts';
import { longestCompared } from './constants.ts';

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
