/** What outputs and findings about one part of a base follow from, as digests: the keys they are remembered by. */
import type { Base } from './base.ts';
import { digestOf } from './memory.ts';
import type { ReadingTable } from './readings.ts';

const ofFamilies = new WeakMap<Base, Map<string, string>>();

/**
 * A digest of all that the outputs of a family's profiles, and the places of their readings, follow from: what
 * its units can do, its profiles, and the conditions and readings of every session that measured one of them.
 */
export function familyOutputsDigest(base: Base, family: string): string {
  const known = ofFamilies.get(base) ?? new Map<string, string>();
  ofFamilies.set(base, known);
  const before = known.get(family);
  if (before !== undefined) return before;
  const { output, volume } = base.families.get(family)?.data ?? {};
  const profiles = (base.profilesOfFamily.get(family) ?? []).map(({ id }) => {
    const sessions = base.sessionsOfProfile.get(id) ?? [];
    return [
      id,
      ...sessions.map(({ id: session, digest }) => [session, digest, base.readings.get(session)?.digest]),
    ];
  });
  const digest = digestOf(JSON.stringify([output, volume, profiles]));
  known.set(family, digest);
  return digest;
}

/** The same for the outputs of one profile: those of its family. */
export function profileOutputDigest(base: Base, profile: string): string {
  const family = base.profiles.get(profile)?.data.family;
  return family === undefined ? '' : familyOutputsDigest(base, family);
}

const ofSheets = new WeakMap<Base, Map<string, string>>();

/** A digest of all that the rows of one sheet can be judged by alone: rows, conditions, what the units can do. */
export function sheetDigest(base: Base, table: ReadingTable): string {
  const known = ofSheets.get(base) ?? new Map<string, string>();
  ofSheets.set(base, known);
  const digest = known.get(table.session) ?? digestOfSheet(base, table);
  known.set(table.session, digest);
  return digest;
}

function digestOfSheet(base: Base, table: ReadingTable): string {
  const families = new Set(
    table.profiles.map((profile) => `${profile} ${base.profiles.get(profile)?.data.family ?? ''}`),
  );
  // The whole entry of a unit: findings point into it too.
  const units = new Set(
    table.profiles.map(
      (profile) => base.families.get(base.profiles.get(profile)?.data.family ?? '')?.digest ?? '',
    ),
  );
  return digestOf(
    table.digest,
    base.outputs.get(table.session)?.digest ?? '',
    [...families].join('\n'),
    [...units].join('\n'),
  );
}
