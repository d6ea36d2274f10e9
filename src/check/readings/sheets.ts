/** The sheets of each profile of a family, as cells. */
import { type Base, readingsOfProfile } from '../../base/index.ts';
import type { RuleFinding } from '../rule.ts';
import { ProfileSheet } from './cells.ts';

/** Sheets by profile, of one family. */
interface FamilySheets {
  readonly family: string | undefined;
  readonly ofProfile: Map<string, readonly ProfileSheet[]>;
}

const lastFamily = new WeakMap<Base, FamilySheets>();

/**
 * The sheets of a profile that count. Those of the family that was asked for last are kept: the rules look at one
 * family after the other, each of them at the same cells.
 */
export function sheetsOfProfile(base: Base, profile: string): readonly ProfileSheet[] {
  const family = base.profiles.get(profile)?.data.family;
  let kept = lastFamily.get(base);
  if (!kept || kept.family !== family) {
    kept = { family, ofProfile: new Map() };
    lastFamily.set(base, kept);
  }
  const known = kept.ofProfile.get(profile);
  if (known) return known;
  const sheets = readingsOfProfile(base, profile).map(
    ({ session, readings }) => new ProfileSheet(profile, session, readings),
  );
  kept.ofProfile.set(profile, sheets);
  return sheets;
}

/** What each profile's sheets give, one profile after the other. */
export function findingsInSheets(
  base: Base,
  family: string,
  judge: (sheet: ProfileSheet) => readonly RuleFinding[],
): RuleFinding[] {
  return (base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) =>
    sheetsOfProfile(base, id).flatMap((sheet) => judge(sheet)),
  );
}
