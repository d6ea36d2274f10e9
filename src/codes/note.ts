/** Says in plain words how a typed text and a known code differ. */
import { countPhrase, phrase } from '../words/index.ts';
import type { Slip } from './alignment.ts';
import { displayedPosition } from './normalise.ts';

const words = (): readonly string[] => [
  phrase('first'),
  phrase('second'),
  phrase('third'),
  phrase('fourth'),
  phrase('fifth'),
  phrase('sixth'),
  phrase('seventh'),
  phrase('eighth'),
  phrase('ninth'),
  phrase('tenth'),
  phrase('eleventh'),
  phrase('twelfth'),
];

/** `first` to `twelfth`, then `13th`, `21st`. */
export function ordinal(position: number): string {
  const word = words()[position - 1];
  if (word) return word;
  switch (new Intl.PluralRules(phrase('en'), { type: 'ordinal' }).select(position)) {
    case 'one':
      return phrase('{position}st', { position });
    case 'two':
      return phrase('{position}nd', { position });
    case 'few':
      return phrase('{position}rd', { position });
    default:
      return phrase('{position}th', { position });
  }
}

/** More slips than this are not told one by one. */
const mostTold = 3;

/** The slips between what was typed and a code as written, in one line. Empty when there are none. */
export function slipsInWords(slips: readonly Slip[], written: string): string {
  if (slips.length > mostTold) {
    return countPhrase(slips.length, '{count} character differs', '{count} characters differ');
  }
  return slips.map((slip) => inWords(slip, written)).join('; ');
}

function inWords({ kind, at, shown, typed }: Slip, written: string): string {
  const nth = ordinal(displayedPosition(written, at));
  const before = at === 0 ? undefined : ordinal(displayedPosition(written, at - 1));
  switch (kind) {
    case 'dropped':
      return before === undefined
        ? phrase('one character missing at the beginning')
        : phrase('one character missing after the {nth}', { nth: before });
    case 'added':
      return before === undefined
        ? phrase('one character too many at the beginning')
        : phrase('one character too many after the {nth}', { nth: before });
    case 'doubled':
      return phrase('{nth} character typed twice', { nth });
    case 'swapped':
      return phrase('{nth} and {next} characters swapped', {
        nth,
        next: ordinal(displayedPosition(written, at + 1)),
      });
    case 'leading-zeros':
      return phrase('same code but for zeros at the beginning');
    default:
      return phrase('{nth} character: is it {shown} or {typed}?', { nth, shown, typed });
  }
}
