/** A sequence made by hand, small enough to be drawn on a napkin, for the tests of the walk. */
import type { Sequence } from '../../schemas/index.ts';

type State = Sequence['states'][number];
type Transition = Sequence['transitions'][number];

export const press = (from: string, to: string, control = 'menu'): Transition => ({
  from,
  to,
  action: { kind: 'press', control, times: 1 },
  say: `Press ${control}.`,
});

export const state = (id: string, more: Partial<State> = {}): State => ({
  id,
  see: `See ${id}.`,
  shows: 'nothing',
  notActiveCode: [],
  recovery: [],
  ...more,
});

export function sequenceOf(
  states: readonly State[],
  transitions: readonly Transition[],
  start = 'dark',
): Sequence {
  return {
    family: 'f',
    name: 'n',
    summary: 's',
    cautions: ['parked'],
    start,
    states: [...states],
    transitions: [...transitions],
    sources: ['x'],
  };
}
