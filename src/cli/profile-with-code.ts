/** Finds the profile of a unit by its code, and helps where there is none. */
import type { Base, Entry } from '../base/index.ts';
import { canonicalCode } from '../codes/index.ts';
import type { Output } from './command.ts';
import { findResult } from './commands/find.ts';

/**
 * The profile of a family whose code, or another spelling of it, this is: capitals and separators aside. Where there
 * is none, says what it could be; where another is easily taken for it, says how to tell.
 */
export function profileWithCode(
  base: Base,
  family: Entry<'families'>,
  typed: string,
  output: Output,
): Entry<'profiles'> | undefined {
  const wanted = canonicalCode(typed);
  const profile = base.profilesOfFamily
    .get(family.id)
    ?.find(({ data }) => [data.code, ...data.otherSpellings].some((one) => canonicalCode(one) === wanted));
  if (!profile) {
    const { advice, candidates } = findResult(base, typed, family.id);
    output.err(`“${family.data.name}” has no profile with exactly this code. ${advice}`);
    for (const one of candidates) output.err(`  ${one.code}  ${one.family}  ${one.note}`);
    return undefined;
  }
  for (const { from, hint } of profile.data.tellApart) {
    output.err(`Easily taken for ${base.profiles.get(from)?.data.code ?? from}. ${hint}`);
  }
  return profile;
}
