/** Every point of a walk, by its name in the address, and where each answer leads from it. */
import type { Sequence } from '../../schemas/index.ts';

type Transition = Sequence['transitions'][number];
type Recovery = Sequence['states'][number]['recovery'][number];

interface Point {
  /** Its name, which is also the fragment of the address: `do-dark-to-prompt`. */
  readonly at: string;
  /** The point one comes back to where the browser remembers no other. */
  readonly back: string | undefined;
}

/** A point at which a state is expected to be seen. */
interface Expecting extends Point {
  /** The state that should be seen now. */
  readonly state: string;
  /** Where “I see it” leads. */
  readonly onSeen: string;
  /** Where “I see something else” leads. */
  readonly onOther: string;
}

export type WalkPoint =
  /** Cautions, before anything is touched. */
  | (Point & { readonly kind: 'begin'; readonly onward: string })
  /** The start: is what is seen what should be seen? */
  | (Expecting & { readonly kind: 'look' })
  /** One step: something is done, and a state is expected. */
  | (Expecting & { readonly kind: 'step'; readonly transition: Transition })
  /** Several steps lead on from a state. */
  | (Point & {
      readonly kind: 'choose';
      readonly state: string;
      readonly choices: readonly { readonly at: string; readonly transition: Transition }[];
    })
  /** Something other than a state was seen. */
  | (Point & {
      readonly kind: 'other';
      readonly state: string;
      readonly choices: readonly { readonly at: string; readonly recovery: Recovery }[];
      readonly onNone: string;
    })
  /** What to do about it, and the state to take up again from. */
  | (Expecting & { readonly kind: 'recover'; readonly recovery: Recovery })
  /** The active code is on the screen. */
  | (Point & { readonly kind: 'code'; readonly state: string })
  /** No step leads on and no code is shown: an unfinished sequence. */
  | (Point & { readonly kind: 'lost'; readonly state: string; readonly onNone: string });

/** The points of a sequence, the first to be shown first. */
export function walkPoints(sequence: Sequence): WalkPoint[] {
  const { states, transitions, start } = sequence;
  const names = stepNames(transitions);
  const stepAt = (transition: Transition): string => names.get(transition) ?? '';
  const waysFrom = (state: string): Transition[] => transitions.filter(({ from }) => from === state);
  const shows = new Map(states.map((state) => [state.id, state.shows]));

  const landing = (state: string): string => {
    if (shows.get(state) === 'active-code') return `code-${state}`;
    const [only, ...more] = waysFrom(state);
    if (!only) return `lost-${state}`;
    return more.length > 0 ? `choose-${state}` : stepAt(only);
  };
  const look = `look-${start}`;
  const cameBy = firstWaysIn(sequence);
  const wayIn = (state: string): string => {
    const step = cameBy.get(state);
    return step ? stepAt(step) : look;
  };
  const expecting = (state: string): Pick<Expecting, 'state' | 'onSeen' | 'onOther'> => ({
    state,
    onSeen: landing(state),
    onOther: `else-${state}`,
  });

  return [
    { kind: 'begin', at: 'begin', back: undefined, onward: look },
    { kind: 'look', at: look, back: 'begin', ...expecting(start) },
    ...transitions.map((transition): WalkPoint => {
      const isChosen = waysFrom(transition.from).length > 1;
      const back = isChosen ? `choose-${transition.from}` : wayIn(transition.from);
      return { kind: 'step', at: stepAt(transition), back, transition, ...expecting(transition.to) };
    }),
    ...states.flatMap(({ id, recovery }): WalkPoint[] => [
      ...landingPoint(id, landing(id)),
      {
        kind: 'other',
        at: `else-${id}`,
        back: wayIn(id),
        state: id,
        choices: recovery.map((one, index) => ({ at: `help-${id}-${index + 1}`, recovery: one })),
        onNone: look,
      },
      ...recovery.map(
        (one, index): WalkPoint => ({
          kind: 'recover',
          at: `help-${id}-${index + 1}`,
          back: `else-${id}`,
          recovery: one,
          ...expecting(one.goTo),
        }),
      ),
    ]),
  ];

  function landingPoint(state: string, at: string): WalkPoint[] {
    const back = wayIn(state);
    if (at === `code-${state}`) return [{ kind: 'code', at, back, state }];
    if (at === `lost-${state}`) return [{ kind: 'lost', at, back, state, onNone: look }];
    if (at !== `choose-${state}`) return [];
    const choices = waysFrom(state).map((transition) => ({ at: stepAt(transition), transition }));
    return [{ kind: 'choose', at, back, state, choices }];
  }
}

/** A name for each step; steps between the same two states are told apart by a number. */
function stepNames(transitions: readonly Transition[]): Map<Transition, string> {
  const taken = new Set<string>();
  return new Map(
    transitions.map((transition) => {
      const plain = `do-${transition.from}-to-${transition.to}`;
      let name = plain;
      for (let count = 2; taken.has(name); count += 1) name = `${plain}-${count}`;
      taken.add(name);
      return [transition, name];
    }),
  );
}

/** The step by which each state is first reached from the start. */
function firstWaysIn({ start, transitions }: Sequence): Map<string, Transition | undefined> {
  const cameBy = new Map<string, Transition | undefined>([[start, undefined]]);
  for (const [state] of cameBy) {
    for (const transition of transitions) {
      if (transition.from === state && !cameBy.has(transition.to)) cameBy.set(transition.to, transition);
    }
  }
  return cameBy;
}
