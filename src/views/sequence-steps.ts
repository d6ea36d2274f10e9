/** A sequence's state machine as numbered steps that a person can follow. */
import type { Family, Sequence } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';
import { actionFacts, controlsOf, withoutOr } from './action-words.ts';
import type { Fact } from './session-conditions.ts';

export interface RecoveryView {
  readonly seen: string;
  readonly advice: string;
  /** Where to take up again, such as “Go on with step 3.” */
  readonly onward: string;
  readonly anchor: string;
}

/** What is seen in a state, and what of it is a code. */
export interface ScreenView {
  readonly see: string;
  readonly shows: 'nothing' | 'profile-list' | 'active-code';
  readonly activeCodeAt: string | undefined;
  readonly notActiveCode: readonly string[];
  readonly recoveries: readonly RecoveryView[];
}

export interface StepView {
  readonly number: number;
  readonly anchor: string;
  readonly say: string;
  readonly facts: readonly Fact[];
  /** Ids of the controls used, for the drawing. */
  readonly controls: readonly string[];
  readonly screen: ScreenView;
}

export interface SequenceView {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  readonly start: ScreenView & { readonly anchor: string };
  readonly steps: readonly StepView[];
  /** Steps that are not on the shortest way to the code. */
  readonly byways: readonly { readonly anchor: string; readonly say: string; readonly screen: ScreenView }[];
}

type State = Sequence['states'][number];
type Transition = Sequence['transitions'][number];

/**
 * The steps of a sequence: the shortest way from its start to a state that shows the active code, then the
 * transitions off that way. Where no state shows it, the way goes as far as the transitions lead.
 */
export function sequenceView(id: string, sequence: Sequence, family: Family): SequenceView {
  const states = new Map(sequence.states.map((state) => [state.id, state]));
  const way = shortestWay(sequence, states);
  const others = sequence.transitions.filter((transition) => !way.includes(transition));
  const last = id.slice(id.lastIndexOf('/') + 1);
  const startAnchor = `${last}-start`;

  const places = new Map<string, { anchor: string; onward: string }>();
  places.set(sequence.start, { anchor: startAnchor, onward: phrase('Start again with step 1.') });
  way.forEach((transition, index) => {
    const number = index + 1;
    const onward =
      number === way.length
        ? phrase('You are there: read the code as in step {step}.', { step: number })
        : phrase('Go on with step {step}.', { step: number + 1 });
    places.set(transition.to, { anchor: `${last}-step-${number}`, onward });
  });
  others.forEach((transition, index) => {
    if (!places.has(transition.to)) {
      places.set(transition.to, {
        anchor: `${last}-byway-${index + 1}`,
        onward: phrase('Go on from there.'),
      });
    }
  });

  const screenAt = (stateId: string): ScreenView => screenOf(states.get(stateId), places);
  return {
    id,
    name: sequence.name,
    summary: sequence.summary,
    start: { ...screenAt(sequence.start), anchor: startAnchor },
    steps: way.map((transition, index) => ({
      number: index + 1,
      anchor: `${last}-step-${index + 1}`,
      say: withoutOr(transition.say),
      facts: actionFacts(transition.action, family),
      controls: controlsOf(transition.action),
      screen: screenAt(transition.to),
    })),
    byways: others.map((transition, index) => ({
      anchor: `${last}-byway-${index + 1}`,
      say: transition.say,
      screen: screenAt(transition.to),
    })),
  };
}

function screenOf(
  state: State | undefined,
  places: ReadonlyMap<string, { anchor: string; onward: string }>,
): ScreenView {
  return {
    see: state?.see ?? '',
    shows: state?.shows ?? 'nothing',
    activeCodeAt: state?.activeCodeAt,
    notActiveCode: state?.notActiveCode ?? [],
    recoveries: (state?.recovery ?? []).map(({ seen, advice, goTo }) => ({
      seen,
      advice,
      onward: places.get(goTo)?.onward ?? '',
      anchor: places.get(goTo)?.anchor ?? '',
    })),
  };
}

/** Breadth first, so that the first way found has the fewest steps; ties go to the order of the file. */
function shortestWay(sequence: Sequence, states: ReadonlyMap<string, State>): Transition[] {
  const cameBy = new Map<string, Transition | undefined>([[sequence.start, undefined]]);
  const queue = [sequence.start];
  let end = sequence.start;
  for (let here = queue.shift(); here !== undefined; here = queue.shift()) {
    end = here;
    if (states.get(here)?.shows === 'active-code') break;
    for (const transition of sequence.transitions) {
      if (transition.from !== here || cameBy.has(transition.to)) continue;
      cameBy.set(transition.to, transition);
      queue.push(transition.to);
    }
  }
  const way: Transition[] = [];
  for (let step = cameBy.get(end); step; step = cameBy.get(step.from)) way.unshift(step);
  return way;
}
