/** Which changed entries an answer of a profile may have moved by. */
import type { Kind } from '../../schemas/index.ts';
import { differsDecisively } from './decisive.ts';
import { hasRowChanges, type SheetChanges } from './sheet-changes.ts';
import type { States } from './states.ts';

/** A changed entry that has a say in an answer; by its id now (before, where it is gone). */
export interface Cause {
  readonly kind: Extract<Kind, 'families' | 'profiles' | 'outputs' | 'plans' | 'equipment' | 'tables'>;
  readonly id: string;
  /** Of a table, the ids of the rules that decided before or do now. */
  readonly rules?: readonly string[];
}

/** The changed entries a profile's measured output follows from, readings included. */
export function causesOfOutput(states: States, sheets: SheetChanges, profile: string): Cause[] {
  const { before, now } = states;
  const sessions = new Set([
    ...(now.base.sessionsOfProfile.get(profile) ?? []).map(({ id }) => id),
    ...(before.base.sessionsOfProfile.get(states.idBefore('profiles', profile)) ?? []).map(({ id }) =>
      states.idNow('outputs', id),
    ),
  ]);
  const changed = [...sessions].filter(
    (session) =>
      differsDecisively(states.pair('outputs', session)) || hasRowChanges(sheets.of(session, profile)),
  );
  const family = now.base.profiles.get(profile)?.data.family;
  return [
    ...changed.map((id): Cause => ({ kind: 'outputs', id })),
    ...(family !== undefined && differsDecisively(states.pair('families', family))
      ? [{ kind: 'families', id: family } as const]
      : []),
  ];
}

/** The same, and the profile itself where it is meant for another system or comes from elsewhere now. */
export function causesOfProfile(states: States, sheets: SheetChanges, profile: string): Cause[] {
  const own = differsDecisively(states.pair('profiles', profile));
  return [
    ...causesOfOutput(states, sheets, profile),
    ...(own ? [{ kind: 'profiles', id: profile } as const] : []),
  ];
}
