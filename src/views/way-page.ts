/** The view models of the pages that lead through one sequence: step by step, as a drawing, as a card. */
import type { Family, Sequence } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import type { FaceData } from '../plot/face.ts';
import { type StateDiagram, stateDiagram } from '../plot/state-diagram.ts';
import { phrase } from '../words/index.ts';
import { actionLine } from './action-words.ts';
import { type CautionText, cautionTexts } from './cautions.ts';
import { unitPath, wayPath } from './paths.ts';
import { type SequenceView, sequenceView } from './sequence-steps.ts';
import { faceData } from './unit-page.ts';
import { type WalkScreenView, walkScreens } from './walk-screens.ts';

/** One state in words: the drawing's text. */
export interface StateInWords {
  readonly title: string;
  readonly see: string;
  readonly note: string;
  readonly ways: readonly { readonly action: string; readonly to: string }[];
  readonly recoveries: readonly { readonly seen: string; readonly to: string }[];
}

export interface WayPageView {
  readonly id: string;
  readonly family: string;
  readonly path: string;
  readonly unit: { readonly name: string; readonly path: string };
  readonly name: string;
  readonly summary: string;
  /** The other ways to the code of this unit. */
  readonly others: readonly { readonly name: string; readonly path: string; readonly summary: string }[];
  /** What to look for: the shape of this unit’s codes. */
  readonly codeWhere: string;
  readonly cautions: readonly CautionText[];
  readonly face: FaceData;
  readonly sequence: SequenceView;
  readonly screens: readonly WalkScreenView[];
  readonly diagram: StateDiagram;
  readonly states: readonly StateInWords[];
}

/** One view for each sequence whose unit is known, in the order of the files. */
export function wayPages({ base }: Answers): WayPageView[] {
  return [...base.sequences.values()].flatMap((sequence) => {
    const family = base.families.get(sequence.data.family);
    const all = base.sequencesOfFamily.get(sequence.data.family) ?? [];
    return family
      ? [
          wayPage(
            sequence,
            family,
            all.filter(({ id }) => id !== sequence.id),
          ),
        ]
      : [];
  });
}

function wayPage(
  { id, data }: Entry<'sequences'>,
  family: Entry<'families'>,
  others: readonly Entry<'sequences'>[],
): WayPageView {
  return {
    id,
    family: family.id,
    path: wayPath(family.id, id),
    unit: { name: family.data.name, path: unitPath(family.id) },
    name: data.name,
    summary: data.summary,
    others: others.map((other) => ({
      name: other.data.name,
      path: wayPath(family.id, other.id),
      summary: other.data.summary,
    })),
    codeWhere: family.data.code.where,
    cautions: cautionTexts(data.cautions),
    face: {
      ...faceData(family),
      controls: faceData(family).controls.map((one) => ({ ...one, numbers: [] })),
    },
    sequence: sequenceView(id, data, family.data),
    screens: walkScreens(data, family.data),
    diagram: diagramOf(data, family.data),
    states: statesInWords(data, family.data),
  };
}

/** `list-loading` → “List loading”: a state’s name as a person would write it. */
export function stateTitle(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function diagramOf(sequence: Sequence, family: Family): StateDiagram {
  return stateDiagram({
    start: sequence.start,
    states: sequence.states.map(({ id, shows }) => ({ id, title: stateTitle(id), kind: shows })),
    steps: sequence.transitions.map(({ from, to, action }) => ({
      from,
      to,
      label: actionLine(action, family),
    })),
    recoveries: sequence.states.flatMap(({ id, recovery }) =>
      recovery.map(({ goTo }) => ({ from: id, to: goTo })),
    ),
  });
}

function noteOf(shows: Sequence['states'][number]['shows']): string {
  if (shows === 'nothing') return '';
  return shows === 'active-code' ? phrase('The active code is here.') : phrase('The list: not your answer.');
}

function statesInWords(sequence: Sequence, family: Family): StateInWords[] {
  return sequence.states.map(({ id, see, shows, recovery }) => ({
    title: stateTitle(id),
    see,
    note: noteOf(shows),
    ways: sequence.transitions
      .filter(({ from }) => from === id)
      .map(({ action, to }) => ({ action: actionLine(action, family), to: stateTitle(to) })),
    recoveries: recovery.map(({ seen, goTo }) => ({ seen, to: stateTitle(goTo) })),
  }));
}
