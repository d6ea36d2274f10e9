/** What pages may weigh, compressed with gzip. */

/** A profile's page with all it loads, its plots included, bytes. */
export const mostPageBytes = 60_000;

/** All scripts of a page, those within it and workers included, bytes: of the planner’s until a whole plan is shown. */
export function budgetOf(kind: string): number {
  return kind === 'planner' ? 35_000 : 20_000;
}

/** A whole plan with all its sections, an equaliser’s settings included. */
export const filledPlan = {
  unit: 'brasslight',
  code: '5S1I-B80',
  amplifier: 'four-channels-equaliser',
  front: 'fairing-coaxial',
  rear: 'lid-speaker',
} as const;
