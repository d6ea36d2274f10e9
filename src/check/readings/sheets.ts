/** The sheets of each profile of a family, as cells. */
import { type Base, readingsOfProfile } from '../../base/index.ts';
import type { RuleFinding } from '../rule.ts';
import { type ProfileSheet, profileSheet } from './cells.ts';

/** The sheets of one profile that count, oldest first. */
export function sheetsOfProfile(base: Base, profile: string): ProfileSheet[] {
  return readingsOfProfile(base, profile).map(({ session, readings }) =>
    profileSheet(profile, session, readings),
  );
}

/** What each profile's sheets give, one profile after the other, so that not all their cells are kept at once. */
export function findingsInSheets(
  base: Base,
  family: string,
  judge: (sheet: ProfileSheet) => readonly RuleFinding[],
): RuleFinding[] {
  return (base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) =>
    sheetsOfProfile(base, id).flatMap(judge),
  );
}
