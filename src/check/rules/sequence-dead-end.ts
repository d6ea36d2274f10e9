import type { SequenceAction } from '../../../schemas/index.ts';
import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { areStatesSound, leadsToCode, reachedStates, statesWithoutStep } from '../sequence-ways.ts';

export const sequenceDeadEnd: Rule = {
  id: 'sequence-dead-end',
  title: 'A rider always has a way on.',
  explanation:
    'A sequence leaves nobody in front of a screen without advice. A state that does not show the active code has a step that leads on or a recovery. And where a step is easily missed, because it is timed (a wait, a hold) or counted (several presses, taps or clicks), the state it leads to has a recovery that says what is seen else, what to do, and where to take up again. A recovery belongs to the screen that was expected, not to the one before it; a step back to the start needs none.',
  severity: 'error',
  examples: [
    {
      title: 'a state with nothing to do next',
      file: 'sequences/moorlight-menu.yaml',
      good: '  - id: active\n',
      bad: '  - id: version\n    see: The version of the unit.\n  - id: active\n',
      foundAt: 'version\n',
      also: [
        {
          file: 'sequences/moorlight-menu.yaml',
          good: '    say: Press BACK once.\n',
          bad: '    say: Press BACK once.\n  - { from: list, to: version, action: { kind: press, control: menu }, say: Or press MENU. }\n',
        },
      ],
    },
    {
      title: 'a hold that may fail, and no word of what then',
      file: 'sequences/moorlight-menu.yaml',
      good: '    recovery:\n      - seen: The radio plays.\n        advice: The key came too late. Turn the ignition off and begin again.\n        goTo: dark\n',
      bad: '',
      foundAt: 'hold\n',
    },
  ],
  check: ({ answers: { base } }) => [...base.sequences.values()].flatMap(deadEnds),
};

function deadEnds(sequence: Entry<'sequences'>): Finding[] {
  const { data } = sequence;
  // Without a way to the code, where the steps end is told with that; a list at the end has its own rule.
  if (!areStatesSound(data) || !leadsToCode(data)) return [];
  const finding = (path: readonly (string | number)[], message: string, help: string): Finding => ({
    rule: 'sequence-dead-end',
    severity: 'error',
    place: sequence.place(path),
    message,
    help,
    related: [],
  });
  const reached = reachedStates(data, 'with-recoveries');
  const stuck = statesWithoutStep(data).filter(
    ({ id, shows, recovery, activeCodeAt }) =>
      reached.has(id) && shows === 'nothing' && recovery.length === 0 && activeCodeAt === undefined,
  );
  // A state that nothing leads to any more is named; that a step leads past it is the same mistake.
  const isAllReached = data.states.every(({ id }) => reached.has(id));
  const states = new Map(data.states.map((state) => [state.id, state]));
  const hasRecovery = (id: string): boolean => (states.get(id)?.recovery.length ?? 0) > 0;
  return [
    ...stuck.map(({ id }) =>
      finding(
        ['states', data.states.findIndex((state) => state.id === id), 'id'],
        `The state “${id}” has no step that leads on and no recovery.`,
        'Add the step that follows, or a recovery that says what to do and where to take up again.',
      ),
    ),
    ...data.transitions.flatMap(({ to, action }, index) => {
      const how = howMissed(action);
      if (!isAllReached || how === undefined || to === data.start || hasRecovery(to)) return [];
      return finding(
        ['transitions', index, 'action', 'kind'],
        `This ${action.kind} ${how}, and “${to}” does not say what to do then.`,
        `Add a recovery to “${to}”: what is seen instead, what to do about it, and where to take up again.`,
      );
    }),
  ];
}

/** How a timed or counted action comes to fail; undefined for one that is done or not done. */
function howMissed(action: SequenceAction): string | undefined {
  switch (action.kind) {
    case 'hold':
    case 'wait':
      return `may come to nothing after ${action.mostSeconds} s`;
    case 'press':
    case 'tap':
      return action.times > 1 ? `of ${action.times} times can be miscounted` : undefined;
    case 'turn':
      return action.clicks > 1 ? `by ${action.clicks} clicks can be miscounted` : undefined;
    case 'ignition':
      return undefined;
  }
}
