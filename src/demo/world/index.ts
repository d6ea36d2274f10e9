/**
 * The demo world as data: head units, their profiles, the benches and what was measured when.
 * Everything in it is invented.
 */

import { profileId } from '../../base/profile-id.ts';
import { benches } from './benches.ts';
import { brasslight } from './brasslight.ts';
import { dialstone } from './dialstone.ts';
import { glasswick } from './glasswick.ts';
import { lanternby } from './lanternby.ts';
import { northpane } from './northpane.ts';
import type { DemoBench, DemoFamily, DemoProfile } from './types.ts';

export { profileId } from '../../base/profile-id.ts';
export { benches, signalLevelDbfs } from './benches.ts';
export { sessions } from './sessions.ts';
export type { DemoBench, DemoFamily, DemoProfile, DemoSession } from './types.ts';

export const families: readonly DemoFamily[] = [brasslight, dialstone, glasswick, northpane, lanternby];

/** A profile with its id and the family it belongs to. */
export interface PlacedProfile {
  readonly id: string;
  readonly family: DemoFamily;
  readonly profile: DemoProfile;
}

export const profiles: readonly PlacedProfile[] = families.flatMap((family) =>
  family.profiles.map((profile) => ({ id: profileId(family.id, profile.code), family, profile })),
);

const placed = new Map(profiles.map((entry) => [entry.id, entry]));

/** The profile of this id. @throws where the demo world has none. */
export function findProfile(id: string): PlacedProfile {
  const found = placed.get(id);
  if (!found) throw new Error(`The demo world has no profile "${id}". Its profiles are in src/demo/world/.`);
  return found;
}

/** The bench of this id. @throws where the demo world has none. */
export function findBench(id: string): DemoBench {
  const found = benches.find((bench) => bench.id === id);
  if (!found)
    throw new Error(`The demo world has no bench "${id}". Its benches are in src/demo/world/benches.ts.`);
  return found;
}
