/** Profiles that entries say are one under several names. */
import type { Base } from '../base/index.ts';

const ofBase = new WeakMap<Base['profiles'], ReadonlyMap<string, string>>();

/** Whether sameAs joins two profiles, in whichever direction and over however many steps. */
export function areDeclaredSame(base: Base, a: string, b: string): boolean {
  return sharedName(base, a) === sharedName(base, b);
}

/** A name that all profiles share which sameAs joins to this one: the id of one of them. */
export function sharedName({ profiles }: Base, profile: string): string {
  let names = ofBase.get(profiles);
  if (!names) {
    names = firstNames(profiles);
    ofBase.set(profiles, names);
  }
  return names.get(profile) ?? profile;
}

/** For every profile joined to others one name that all of them share. */
function firstNames(profiles: Base['profiles']): Map<string, string> {
  const neighbours = new Map<string, string[]>();
  for (const [id, { data }] of profiles) {
    if (data.sameAs === undefined) continue;
    neighbours.set(id, [...(neighbours.get(id) ?? []), data.sameAs]);
    neighbours.set(data.sameAs, [...(neighbours.get(data.sameAs) ?? []), id]);
  }
  const names = new Map<string, string>();
  for (const first of neighbours.keys()) {
    if (names.has(first)) continue;
    const joined = new Set([first]);
    for (const id of joined) for (const next of neighbours.get(id) ?? []) joined.add(next);
    for (const id of joined) names.set(id, first);
  }
  return names;
}
