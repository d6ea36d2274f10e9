/** The sheets of each profile of a base, as cells. */
import { type Base, type Entry, readingsOfProfile } from '../../base/index.ts';
import { type ProfileSheet, profileSheet } from './cells.ts';

export interface MeasuredProfile {
  readonly profile: Entry<'profiles'>;
  readonly family: Entry<'families'>;
  /** One a session that measured it and counts, oldest first. */
  readonly sheets: readonly ProfileSheet[];
}

/** Goes through the profiles of a family one by one, so that not all their cells are kept at once. */
export function* measuredProfiles(base: Base, familyId: string): Generator<MeasuredProfile> {
  const family = base.families.get(familyId);
  if (!family) return;
  for (const profile of base.profilesOfFamily.get(familyId) ?? []) {
    const sheets = readingsOfProfile(base, profile.id).map(({ session, readings }) =>
      profileSheet(profile.id, session, readings),
    );
    if (sheets.length > 0) yield { profile, family, sheets };
  }
}
