/** Every screen of the guided walk: what it says, what it shows, and where its answers lead. */
import type { Family, Sequence, SequenceAction } from '../../schemas/index.ts';
import {
  beginWords,
  endWords,
  progressOf,
  progressText,
  type Timing,
  timingOf,
  type WalkPoint,
  walkPoints,
} from '../walk/index.ts';
import { phrase } from '../words/index.ts';
import { actionFacts, withoutOr } from './action-words.ts';
import type { Fact } from './session-conditions.ts';

/** What is seen in a state, and what of it is a code. */
export interface SeenView {
  readonly see: string;
  readonly shows: 'nothing' | 'profile-list' | 'active-code';
  readonly activeCodeAt: string | undefined;
  readonly notActiveCode: readonly string[];
}

export interface WalkLink {
  readonly at: string;
  readonly text: string;
}

export interface WalkScreenView {
  readonly at: string;
  readonly kind: WalkPoint['kind'];
  /** “Step 2 of 4”, or what kind of screen it is. */
  readonly progress: string;
  readonly title: string;
  readonly facts: readonly Fact[];
  /** What is done, where something is: for the marks on the face. */
  readonly action: SequenceAction | undefined;
  readonly timer: WalkTimer | undefined;
  /** The state one is in while reading this screen, where it is a list: the trap is told again. */
  readonly here: SeenView | undefined;
  /** What should be seen now, or next. */
  readonly expected: (SeenView & { readonly label: string }) | undefined;
  readonly choices: readonly WalkLink[];
  readonly onward: WalkLink | undefined;
  readonly other: WalkLink | undefined;
  readonly restart: WalkLink | undefined;
  readonly back: string | undefined;
}

export interface WalkTimer extends Timing {
  /** What the button that begins the count says. */
  readonly startText: string;
  /** Whether counting in helps: the rider, not the screen, chooses the moment. */
  readonly canLeadIn: boolean;
  /** What stands there before the count begins: when to begin. */
  readonly readyText: string;
}

/** The screens of a sequence, in the order of its points. */
export function walkScreens(sequence: Sequence, family: Family): WalkScreenView[] {
  const points = walkPoints(sequence);
  const look = points.find(({ kind }) => kind === 'look')?.at ?? 'begin';
  const again: WalkLink = { at: look, text: phrase('Start again') };
  const seen = (id: string): SeenView | undefined => {
    const state = sequence.states.find((one) => one.id === id);
    return (
      state && {
        see: state.see,
        shows: state.shows,
        activeCodeAt: state.activeCodeAt,
        notActiveCode: state.notActiveCode,
      }
    );
  };
  const expected = (id: string, label: string): WalkScreenView['expected'] => {
    const view = seen(id);
    return view && { ...view, label };
  };

  const screenOf = (point: WalkPoint): WalkScreenView => {
    const plain = { ...empty, at: point.at, kind: point.kind, back: point.back };
    switch (point.kind) {
      case 'begin':
        return {
          ...plain,
          progress: phrase('Before you begin'),
          title: phrase('Heed these first'),
          onward: { at: point.onward, text: phrase('I have read this: go on') },
        };
      case 'look':
        return {
          ...plain,
          progress: phrase('Where you start'),
          title: phrase('Does it look like this?'),
          expected: expected(point.state, phrase('You see')),
          ...answers(point),
        };
      case 'step': {
        const { transition } = point;
        return {
          ...plain,
          progress: progressText(progressOf(sequence, transition)) || phrase('Next step'),
          title: withoutOr(transition.say),
          facts: stepFacts(transition.action, family),
          action: transition.action,
          timer: timerOf(transition.action),
          here: trapOnly(seen(transition.from)),
          expected: expected(point.state, phrase('Then you see')),
          restart: again,
          ...answers(point),
        };
      }
      case 'choose':
        return {
          ...plain,
          progress: phrase('Choose'),
          title: point.choices.length === 2 ? phrase('Two ways on') : phrase('Several ways on'),
          here: trapOnly(seen(point.state)),
          choices: point.choices.map(({ at, transition }) => ({ at, text: withoutOr(transition.say) })),
          other: { at: `else-${point.state}`, text: otherText() },
        };
      case 'other':
        return {
          ...plain,
          progress: phrase('Something else'),
          title: phrase('What do you see?'),
          choices: point.choices.map(({ at, recovery }) => ({ at, text: recovery.seen })),
          restart: { at: point.onNone, text: phrase('None of these: start again') },
        };
      case 'recover':
        return {
          ...plain,
          progress: phrase('Put it right'),
          title: point.recovery.advice,
          expected: expected(point.state, phrase('Go on when you see')),
          ...answers(point),
        };
      case 'code':
        return {
          ...plain,
          progress: phrase('You are there'),
          title: phrase('Here is the active code'),
          expected: expected(point.state, phrase('You see')),
          restart: again,
        };
      case 'lost':
        return {
          ...plain,
          progress: phrase('No way on'),
          title: phrase('Nothing is known of the way from here. Ask us.'),
          restart: again,
        };
    }
  };
  return points.map(screenOf);
}

const otherText = (): string => phrase('I see something else');

const empty = {
  facts: [],
  action: undefined,
  timer: undefined,
  here: undefined,
  expected: undefined,
  choices: [],
  onward: undefined,
  other: undefined,
  restart: undefined,
} as const;

function answers(point: { readonly onSeen: string; readonly onOther: string }): {
  onward: WalkLink;
  other: WalkLink;
} {
  return {
    onward: { at: point.onSeen, text: phrase('I see it') },
    other: { at: point.onOther, text: otherText() },
  };
}

/** A state worth a warning while one is in it. */
function trapOnly(view: SeenView | undefined): SeenView | undefined {
  return view?.shows === 'profile-list' ? view : undefined;
}

/** For a hold, when to begin and when to let go as orders; for the rest the short facts. */
function stepFacts(action: SequenceAction, family: Family): Fact[] {
  const facts = actionFacts(action, family);
  if (action.kind !== 'hold') return facts;
  const order: readonly (readonly [instead: string, Fact])[] = [
    [phrase('From'), { label: phrase('Begin'), text: beginWords(action.begin) }],
    [phrase('Until'), { label: phrase('Let go'), text: endWords(action.end) }],
  ];
  return facts.map((fact) => order.find(([label]) => label === fact.label)?.[1] ?? fact);
}

function timerOf(action: SequenceAction): WalkTimer | undefined {
  const timing = timingOf(action);
  if (!timing) return undefined;
  if (action.kind !== 'hold') {
    return {
      ...timing,
      startText: phrase('Start the count'),
      canLeadIn: false,
      readyText: phrase('Start as soon as it begins.'),
    };
  }
  const chosen = action.begin === 'any-time' || action.begin === 'with-ignition';
  return {
    ...timing,
    startText: phrase('Holding now'),
    canLeadIn: chosen,
    readyText: beginWords(action.begin),
  };
}
