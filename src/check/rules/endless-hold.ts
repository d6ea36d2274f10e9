import type { SequenceAction } from '../../../schemas/index.ts';
import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

type Timed = Extract<SequenceAction, { kind: 'hold' | 'wait' }>;
type Hold = Extract<SequenceAction, { kind: 'hold' }>;

/** Common practice, no source: nobody holds a key for longer, or stands before a screen for longer. */
const mostSeconds: Readonly<Record<Timed['kind'], number>> = { hold: 60, wait: 300 };

export const endlessHold: Rule = {
  id: 'endless-hold',
  title: 'Every hold and every wait has an end that a rider can keep to.',
  explanation: `A hold or a wait says how long it takes at least, and after how long to give up and start again; the second must be more than the first, or there is no moment to let go. A hold of more than ${mostSeconds.hold} seconds or a wait of more than ${mostSeconds.wait} is mostly a slip of the pen (common practice, no source). A hold ends at a later moment than it begins: with the ignition, then the prompt shown, then the prompt gone. One that ends at any time needs a least time to be held for.`,
  severity: 'error',
  examples: [
    {
      title: 'a longest time shorter than the least',
      file: 'sequences/moorlight-menu.yaml',
      good: 'mostSeconds: 15',
      bad: 'mostSeconds: 2',
      foundAt: '2',
    },
    {
      title: 'seconds with a figure too many',
      file: 'sequences/fellside-touch.yaml',
      good: 'mostSeconds: 10',
      bad: 'mostSeconds: 100',
      foundAt: '100',
    },
    {
      title: 'a hold that ends at the moment it begins',
      file: 'sequences/moorlight-menu.yaml',
      good: 'begin: with-ignition',
      bad: 'begin: prompt-shown',
      foundAt: 'prompt-shown\n      leastSeconds',
    },
  ],
  check: ({ answers: { base } }) =>
    [...base.sequences.values()].flatMap((sequence) =>
      sequence.data.transitions.flatMap(({ action }, index) =>
        action.kind === 'hold' || action.kind === 'wait' ? endless(sequence, index, action) : [],
      ),
    ),
};

/** What is wrong with the end of a hold or wait, the first thing only: the others follow from the same slip. */
function endless(sequence: Entry<'sequences'>, index: number, action: Timed): Finding[] {
  const finding = (field: string, message: string, help: string): Finding[] => [
    {
      rule: 'endless-hold',
      severity: 'error',
      place: sequence.place(['transitions', index, 'action', field]),
      message,
      help,
      related: [],
    },
  ];
  if (action.mostSeconds <= action.leastSeconds) {
    return finding(
      'mostSeconds',
      `This ${action.kind} takes at least ${action.leastSeconds} s, and is to be given up after ${action.mostSeconds} s.`,
      'Give mostSeconds room above leastSeconds, or see whether the two are swapped.',
    );
  }
  if (action.mostSeconds > mostSeconds[action.kind]) {
    return finding(
      'mostSeconds',
      `A ${action.kind} of up to ${action.mostSeconds} s is longer than a rider will keep up (${mostSeconds[action.kind]} s).`,
      'Look for a figure too many; if it takes so long indeed, split it where something is seen.',
    );
  }
  if (action.kind === 'wait') return [];
  if (action.end === 'any-time' && action.leastSeconds === 0) {
    return finding(
      'end',
      'This hold may end at any time, even at once: nothing says when to let go.',
      'Name the moment to let go, or how many seconds it takes at least.',
    );
  }
  if (endsTooSoon(action)) {
    return finding(
      'end',
      action.begin === action.end
        ? `This hold ends at the moment it begins (${words(action.begin)}).`
        : `This hold is to end (${words(action.end)}) before it begins (${words(action.begin)}).`,
      'Name the moment to let go that comes after the one to begin.',
    );
  }
  return [];
}

/** The moments that follow one another at a start; a screen can change any number of times. */
const inOrder: readonly Hold['begin'][] = ['with-ignition', 'prompt-shown', 'prompt-gone'];

function endsTooSoon({ begin, end }: Hold): boolean {
  const [from, to] = [inOrder.indexOf(begin), inOrder.indexOf(end)];
  return from >= 0 && to >= 0 && to <= from;
}

function words(moment: Hold['begin']): string {
  return moment.replaceAll('-', ' ');
}
