import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { areStatesSound, leadsToCode, reachedStates, statesWithoutStep } from '../sequence-ways.ts';

export const listShownAsCode: Rule = {
  id: 'list-shown-as-code',
  title: 'No list of profiles is taken for the active code.',
  explanation:
    'The list of a service screen shows every profile the unit holds, not the one it runs; riders who read it send the wrong code. So no sequence ends at a list: a step leads on to the state that shows the active code. A state with “shows: profile-list” has no activeCodeAt, and its notActiveCode says what on it looks like the code and is not. Where the steps lead on from a state that shows the active code to another that shows it, the first is most likely the list.',
  severity: 'error',
  examples: [
    {
      title: 'the code read off the list',
      file: 'sequences/moorlight-menu.yaml',
      good: 'shows: active-code\n    activeCodeAt',
      bad: 'shows: profile-list\n    activeCodeAt',
      foundAt: 'profile-list',
    },
    {
      title: 'a list without a word of warning',
      file: 'sequences/moorlight-menu.yaml',
      good: '    notActiveCode:\n      - Every line of the list names what the unit holds, not what it runs.\n',
      bad: '',
      foundAt: 'profile-list',
    },
    {
      title: 'a way that ends at a list',
      file: 'sequences/fellside-touch.yaml',
      good: '    shows: active-code\n    activeCodeAt: The middle of the screen.\n',
      bad: '    shows: profile-list\n    notActiveCode: [The lines of the list.]\n',
      foundAt: 'profile-list',
    },
  ],
  check: ({ answers: { base } }) => [...base.sequences.values()].flatMap(listsTakenForCode),
};

function listsTakenForCode(sequence: Entry<'sequences'>): Finding[] {
  const { data } = sequence;
  const isSound = areStatesSound(data);
  // Where the state with the code is there but no step leads to it, the missing step is what is wrong.
  const endCounts =
    isSound && (leadsToCode(data) || !data.states.some(({ shows }) => shows === 'active-code'));
  const reached = reachedStates(data, 'steps-only');
  const ends = new Set(statesWithoutStep(data).filter(({ id }) => reached.has(id)));
  return data.states.flatMap((state, index): Finding[] => {
    if (state.shows === 'active-code') return codeBeforeCode(sequence, index);
    if (state.shows !== 'profile-list') return [];
    const finding = (message: string, help: string): Finding[] => [
      {
        rule: 'list-shown-as-code',
        severity: 'error',
        place: sequence.place(['states', index, 'shows']),
        message,
        help,
        related: [],
      },
    ];
    if (state.activeCodeAt !== undefined) {
      return finding(
        `The state “${state.id}” shows the list of profiles, yet says where the active code stands on it.`,
        'If the active code stands alone there, write “shows: active-code”; if it is the list, take activeCodeAt out.',
      );
    }
    if (endCounts && ends.has(state)) {
      return finding(
        `The steps end at “${state.id}”, which shows the list of profiles and not the active code.`,
        'Add the step that leads from the list to the active code.',
      );
    }
    if (state.notActiveCode.length > 0) return [];
    return finding(
      `The state “${state.id}” shows the list of profiles and does not say that its lines are not the active code.`,
      'Add notActiveCode with what on this screen could be taken for it.',
    );
  });
}

/** A state that shows the active code and is left for another that shows it: the first is likely the list. */
function codeBeforeCode(sequence: Entry<'sequences'>, index: number): Finding[] {
  const { states, transitions } = sequence.data;
  const state = states[index];
  const next = transitions
    .filter((step) => step.from === state?.id && step.to !== state.id)
    .map((step) => states.findIndex(({ id }) => id === step.to))
    .find((at) => states[at]?.shows === 'active-code');
  if (!state || next === undefined) return [];
  return [
    {
      rule: 'list-shown-as-code',
      severity: 'error',
      place: sequence.place(['states', index, 'shows']),
      message: `The state “${state.id}” is said to show the active code, yet a step leads on from it to “${states[next]?.id}”, which shows it too.`,
      help: 'If what it shows is the list, write “shows: profile-list”; if it is the code, end the sequence there.',
      related: [{ place: sequence.place(['states', next, 'shows']), message: 'The code is shown here too.' }],
    },
  ];
}
