/** Says in plain words how a typed text and a known code differ. */
import type { Slip } from './alignment.ts';
import { displayedPosition } from './normalise.ts';

const words = 'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth'.split(' ');

/** `first` to `twelfth`, then `13th`, `21st`. */
export function ordinal(position: number): string {
  const word = words[position - 1];
  if (word) return word;
  const last = position % 100 > 10 && position % 100 < 14 ? 0 : position % 10;
  return `${position}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}

/** More slips than this are not told one by one. */
const mostTold = 3;

/** The slips between what was typed and a code as written, in one line. Empty when there are none. */
export function slipsInWords(slips: readonly Slip[], written: string): string {
  if (slips.length > mostTold) return `${slips.length} characters differ`;
  return slips.map((slip) => inWords(slip, written)).join('; ');
}

function inWords({ kind, at, shown, typed }: Slip, written: string): string {
  const nth = ordinal(displayedPosition(written, at));
  const where = at === 0 ? 'at the beginning' : `after the ${ordinal(displayedPosition(written, at - 1))}`;
  switch (kind) {
    case 'dropped':
      return `one character missing ${where}`;
    case 'added':
      return `one character too many ${where}`;
    case 'doubled':
      return `${nth} character typed twice`;
    case 'swapped':
      return `${nth} and ${ordinal(displayedPosition(written, at + 1))} characters swapped`;
    case 'leading-zeros':
      return 'same code but for zeros at the beginning';
    default:
      return `${nth} character: is it ${shown} or ${typed}?`;
  }
}
