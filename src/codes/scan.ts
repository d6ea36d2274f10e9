/** Compares a text with every code of a group that may matter, each beginning that codes share only once. */
import { fillColumn, pastColumn, setCode, setKind, stopChance, wholeAt } from './alignment.ts';
import type { Channel } from './channel.ts';
import type { Spelling, SpellingGroup } from './code-index.ts';
import { longestCompared, stoppedEarly } from './constants.ts';
import { leadingZeros } from './normalise.ts';
import { reachable } from './reachable.ts';

/** A cell is let go where it could bring only this part of what a code must reach to be told. */
const cellShare = 1e-3;

const beginnings = new Float64Array(longestCompared + 1);

/**
 * Tells every spelling whose likelihood, whole or beginning, is at least `atLeast` against random characters;
 * `setTyped` has laid down the text. The codes are in order, so each fills the table from where it differs from
 * the one before, and where no code that begins so can reach the bound, all of them are passed over.
 */
export function scanGroup(
  group: SpellingGroup,
  how: Channel,
  text: string,
  atLeast: number,
  tell: (at: number, whole: number, beginning: number) => void,
): void {
  const { shared, spellings, digits, letters } = group;
  const length = Math.min(group.length, longestCompared);
  const zeros = Math.min(group.zeros, length);
  const all = setKind(how, length, zeros, atLeast * cellShare);
  if (all < atLeast) return;
  const most = reachable(how, text.slice(0, longestCompared), leadingZeros(text));
  /** After so many characters the latest code was passed over; what it had as a beginning by then. */
  let passed = length + 1;
  let settled = 0;
  /** How many characters the next code has in common with the latest that was laid down. */
  let same = 0;
  for (let at = 0; at < spellings.length; at += 1) {
    same = Math.min(same, shared[at] as number);
    if (same > passed) {
      if (settled >= atLeast) tell(at, 0, settled);
      continue;
    }
    if (all * most(digits[at] as number, letters[at] as number) < atLeast) continue;
    const { canonical, shown } = spellings[at] as Spelling;
    setCode(canonical, shown, same);
    const from = same;
    same = length;
    passed = length + 1;
    settled = 0;
    // A column follows from the characters before it and the next one, which may be swapped with the last.
    for (let i = from; i <= length; i += 1) {
      const more = fillColumn(i);
      const begun = i === 0 ? 0 : (beginnings[i - 1] as number);
      beginnings[i] = begun + (i < length ? wholeAt(i) * stopChance(length - i) : 0);
      if (i < zeros || i === length) continue;
      // A beginning that suffices is told as it is once the rest adds next to nothing.
      const missing = Math.max(atLeast - (beginnings[i] as number), atLeast * cellShare);
      if (more < missing && more + pastColumn(i) < missing) {
        passed = i;
        settled = beginnings[i] as number;
        break;
      }
    }
    if (passed <= length) {
      if (settled >= atLeast) tell(at, 0, settled);
      continue;
    }
    const whole = (1 - stoppedEarly) * wholeAt(length);
    const beginning = beginnings[length] as number;
    if (whole + beginning >= atLeast) tell(at, whole, beginning);
  }
}
