/** What of each profile was measured, in how many sessions, and what was not. */
import type { Answers } from '../../answers.ts';
import { type CharacteristicName, characteristicNames, type ProfileOutput } from '../../measure/index.ts';

/**
 * `confirmed`: read in two sessions or more. `single`: in one, which nothing holds against another bench. `missing`: it
 * could not be computed. `not-applicable`: there is nothing to measure, as with the width of a boost that is none.
 */
export const coverageStates = ['confirmed', 'single', 'missing', 'not-applicable'] as const;
export type CoverageState = (typeof coverageStates)[number];

export type CoverageCounts = Readonly<Record<CoverageState, number>>;

/** How one characteristic of a profile is covered. */
export function coverageOf(output: ProfileOutput, name: CharacteristicName): CoverageState {
  const value = output.characteristics.find((one) => one.name === name);
  if (!value) return output.missing.some((one) => one.name === name) ? 'missing' : 'not-applicable';
  const sessions = new Set(value.readings.map((reading) => reading.slice(0, reading.lastIndexOf(':'))));
  return sessions.size > 1 ? 'confirmed' : 'single';
}

/** The profiles of a family in each state, by characteristic. */
export type FamilyCoverage = ReadonlyMap<
  CharacteristicName,
  Readonly<Record<CoverageState, readonly string[]>>
>;

/** Which profiles of a family are in which state, for every characteristic. */
export function familyCoverage({ base, outputs }: Answers, family: string): FamilyCoverage {
  const profiles = (base.profilesOfFamily.get(family) ?? []).flatMap(({ id }) => {
    const output = outputs.get(id);
    return output ? [{ id, output }] : [];
  });
  return new Map(
    characteristicNames.map((name) => {
      const states: Record<CoverageState, string[]> = {
        confirmed: [],
        single: [],
        missing: [],
        'not-applicable': [],
      };
      for (const { id, output } of profiles) states[coverageOf(output, name)].push(id);
      return [name, states];
    }),
  );
}

/** The counts of all characteristics together. */
export function countsOf(coverage: FamilyCoverage): CoverageCounts {
  const counts = { confirmed: 0, single: 0, missing: 0, 'not-applicable': 0 };
  for (const states of coverage.values()) {
    for (const state of coverageStates) counts[state] += states[state].length;
  }
  return counts;
}
