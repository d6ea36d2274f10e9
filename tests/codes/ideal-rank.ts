/** The best that can be done with a text of one slip: Bayes' rule over every code, by going through all slips. */

import { canonicalCode } from '../../src/codes/canonical-code.ts';
import type { CodeEntry } from '../../src/codes/index.ts';
import { shownForm } from '../../src/codes/normalise.ts';
import { type Reader, singleSlips } from './readers.ts';

/** How many codes are likelier than the right one, given that exactly one slip was made; of equals, half. */
export function idealRank(
  known: readonly CodeEntry[],
  right: CodeEntry,
  typed: string,
  reader: Reader,
): number {
  const own = chanceOf(right, typed, reader);
  let [likelier, equal] = [0, 0];
  for (const entry of known) {
    if (entry === right || !mayBeOneSlip(canonicalCode(entry.code), typed)) continue;
    const chance = chanceOf(entry, typed, reader);
    if (chance > own * (1 + 1e-9)) likelier += 1;
    else if (chance > own * (1 - 1e-9)) equal += 1;
  }
  return likelier + Math.floor(equal / 2);
}

function chanceOf(entry: CodeEntry, typed: string, reader: Reader): number {
  const code = canonicalCode(entry.code);
  const slips = singleSlips(shownForm(entry.code), entry.display ?? 'anti-aliased', reader);
  let [fits, all] = [0, 0];
  for (const slip of slips) {
    all += slip.chance;
    if (code.slice(0, slip.at) + slip.typed + code.slice(slip.at + slip.length) === typed)
      fits += slip.chance;
  }
  return fits / all;
}

/** One slip changes two characters at most: what is before and behind them is the same. */
function mayBeOneSlip(code: string, typed: string): boolean {
  if (Math.abs(code.length - typed.length) > 1) return false;
  let before = 0;
  while (before < typed.length && code[before] === typed[before]) before += 1;
  let behind = 0;
  while (behind < typed.length && code.at(-1 - behind) === typed.at(-1 - behind)) behind += 1;
  return before + behind >= code.length - 2;
}
