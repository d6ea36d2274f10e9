/** Where the steps of a sequence lead: what its rules share. */
import type { Sequence } from '../../schemas/index.ts';

/** Whether every state that is named exists, and once. Where not, what else is wrong may be its echo. */
export function areStatesSound(sequence: Sequence): boolean {
  const ids = new Set(sequence.states.map((state) => state.id));
  return (
    ids.size === sequence.states.length &&
    ids.has(sequence.start) &&
    sequence.transitions.every(({ from, to }) => ids.has(from) && ids.has(to)) &&
    sequence.states.every((state) => state.recovery.every(({ goTo }) => ids.has(goTo)))
  );
}

/** Every state that some chain of steps leads to from the start; `recoveries` counts ways on after a failure too. */
export function reachedStates(sequence: Sequence, recoveries: 'with-recoveries' | 'steps-only'): Set<string> {
  const reached = new Set([sequence.start]);
  const states = new Map(sequence.states.map((state) => [state.id, state]));
  for (const id of reached) {
    for (const step of sequence.transitions) if (step.from === id) reached.add(step.to);
    if (recoveries === 'steps-only') continue;
    for (const { goTo } of states.get(id)?.recovery ?? []) reached.add(goTo);
  }
  return reached;
}

/** Whether the steps from the start come to a state that shows the active code. */
export function leadsToCode(sequence: Sequence): boolean {
  const reached = reachedStates(sequence, 'steps-only');
  return sequence.states.some((state) => state.shows === 'active-code' && reached.has(state.id));
}

/** The states no step leads away from. */
export function statesWithoutStep(sequence: Sequence): Sequence['states'] {
  const left = new Set(sequence.transitions.map(({ from }) => from));
  return sequence.states.filter(({ id }) => !left.has(id));
}
