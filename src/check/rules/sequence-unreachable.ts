import type { Sequence } from '../../../schemas/index.ts';
import type { Rule } from '../rule.ts';
import { areStatesSound, leadsToCode, reachedStates } from '../sequence-ways.ts';

export const sequenceUnreachable: Rule = {
  id: 'sequence-unreachable',
  title: 'Every state of a sequence is led to by a step or a recovery.',
  explanation:
    'A rider comes to a state by the steps from the start, or by what a recovery tells to do. A state that neither leads to is never seen; mostly a step names the wrong state in its place. Add the step, correct its “from” or “to”, or take the state out. Where a whole stretch is cut off, its first state is named.',
  severity: 'error',
  examples: [
    {
      title: 'a state that no step leads to',
      file: 'sequences/moorlight-menu.yaml',
      good: 'states:\n  - id: dark\n',
      bad: 'states:\n  - id: version\n    see: The version of the unit.\n    recovery:\n      - { seen: The radio., advice: Begin again., goTo: dark }\n  - id: dark\n',
      foundAt: 'version\n',
    },
  ],
  check: ({ answers: { base } }) =>
    [...base.sequences.values()].flatMap((sequence) => {
      const { data } = sequence;
      // Without a way to the code, what is cut off is the echo of it.
      if (!areStatesSound(data) || !leadsToCode(data)) return [];
      return firstCutOff(data).map((id) => {
        const index = data.states.findIndex((state) => state.id === id);
        return {
          rule: 'sequence-unreachable',
          severity: 'error',
          place: sequence.place(['states', index, 'id']),
          message: `No step and no recovery leads to the state “${id}”.`,
          help: 'Add the step to it, correct a “from” or “to”, or take the state out.',
          related: [],
        };
      });
    }),
};

/** The states cut off from the start that no other such state leads to; the first where they go in a circle. */
function firstCutOff(sequence: Sequence): string[] {
  const reached = reachedStates(sequence, 'with-recoveries');
  const cutOff = sequence.states.filter(({ id }) => !reached.has(id));
  const ledTo = new Set(
    cutOff.flatMap((state) => [
      ...sequence.transitions.filter(({ from, to }) => from === state.id && to !== from).map(({ to }) => to),
      ...state.recovery.filter(({ goTo }) => goTo !== state.id).map(({ goTo }) => goTo),
    ]),
  );
  const heads = cutOff.filter(({ id }) => !ledTo.has(id));
  return (heads.length > 0 ? heads : cutOff.slice(0, 1)).map(({ id }) => id);
}
