/** What the search over the pages can be narrowed to: the unit, the kind of page, traits of what is measured. */
import type { ProfileOutput } from '../measure/index.ts';

export interface SearchFilters {
  readonly kind: 'Profile' | 'Unit' | 'Guide' | 'Plan' | 'Table';
  /** Names of the units the page is about. */
  readonly units?: readonly string[];
  readonly traits?: readonly string[];
}

/** The filters by the names they have in the index, in the order they are offered. */
export const filterNames = ['Unit', 'Kind', 'Trait'] as const;

/** The filters as Pagefind reads them off a page: `Kind:Profile`, `Unit:Brasslight`. */
export function filterMarks({ kind, units = [], traits = [] }: SearchFilters): string[] {
  return [`Kind:${kind}`, ...units.map((unit) => `Unit:${unit}`), ...traits.map((trait) => `Trait:${trait}`)];
}

const boostTraits: Readonly<Record<ProfileOutput['boostBehaviour'], readonly string[]>> = {
  none: ['No bass boost'],
  fixed: ['Bass boost at every volume'],
  fading: ['Bass boost goes back with the volume'],
  switched: ['Bass boost goes back with the volume'],
  changing: ['Bass boost goes back with the volume'],
  unknown: [],
};

/** What riders narrow profiles by: how the bass is, whether the rear plays, as measured. */
export function outputTraits(output: ProfileOutput | undefined): string[] {
  if (!output || output.sessions.length === 0) return ['Not measured'];
  const rears = output.characteristics.some(({ name }) => name === 'rear-to-front');
  const isSilent = output.mutedChannels.some((channel) => channel.startsWith('R'));
  return [
    ...boostTraits[output.boostBehaviour],
    ...(isSilent ? ['Rear silent'] : rears ? ['Rear plays'] : []),
  ];
}
