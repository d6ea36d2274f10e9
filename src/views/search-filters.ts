/** What the search over the pages can be narrowed to: the unit, the kind of page, traits of what is measured. */
import type { ProfileOutput } from '../measure/index.ts';
import { phrase } from '../words/index.ts';

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
  return [
    `Kind:${kindLabel(kind)}`,
    ...units.map((unit) => `Unit:${unit}`),
    ...traits.map((trait) => `Trait:${trait}`),
  ];
}

/** What riders narrow profiles by: how the bass is, whether the rear plays, as measured. */
export function outputTraits(output: ProfileOutput | undefined): string[] {
  if (!output || output.sessions.length === 0) return [phrase('Not measured')];
  const rears = output.characteristics.some(({ name }) => name === 'rear-to-front');
  const isSilent = output.mutedChannels.some((channel) => channel.startsWith('R'));
  return [
    boostTrait(output.boostBehaviour),
    isSilent ? phrase('Rear silent') : rears ? phrase('Rear plays') : '',
  ].filter((trait) => trait !== '');
}

function boostTrait(behaviour: ProfileOutput['boostBehaviour']): string {
  switch (behaviour) {
    case 'none':
      return phrase('No bass boost');
    case 'fixed':
      return phrase('Bass boost at every volume');
    case 'unknown':
      return '';
    default:
      return phrase('Bass boost goes back with the volume');
  }
}

function kindLabel(kind: SearchFilters['kind']): string {
  const labels: Readonly<Record<SearchFilters['kind'], string>> = {
    Profile: phrase('Profile'),
    Unit: phrase('Unit'),
    Guide: phrase('Guide'),
    Plan: phrase('Plan'),
    Table: phrase('Table'),
  };
  return labels[kind];
}
