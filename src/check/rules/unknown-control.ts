import type { Family, SequenceAction } from '../../../schemas/index.ts';
import { type Base, type DataPath, type Entry, type Finding, nearest } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

type Control = Family['face']['controls'][number];

export const unknownControl: Rule = {
  id: 'unknown-control',
  title: 'Every control that is named is on the face, and can be used that way.',
  explanation:
    'The steps of a sequence and the telling features of a family name controls by the id they have on the face of the family. A control that is not there cannot be found by a rider nor marked in the drawing. A knob is turned or pressed, a key is pressed, a touch area is tapped, and anything can be held; a touch area needs a screen that answers to touch.',
  severity: 'error',
  examples: [
    {
      title: 'a step with a key the face does not have',
      file: 'sequences/moorlight-menu.yaml',
      good: 'controls: [menu]',
      bad: 'controls: [menue]',
      foundAt: 'menue',
    },
    {
      title: 'a key that is turned',
      file: 'sequences/moorlight-menu.yaml',
      good: 'action: { kind: press, control: back }',
      bad: 'action: { kind: turn, control: back, direction: clockwise, clicks: 1 }',
      foundAt: 'back',
    },
    {
      title: 'a telling feature on a control that is not there',
      file: 'families/moorlight.md',
      good: 'control: volume\n',
      bad: 'control: volum\n',
      foundAt: 'volum\n',
    },
  ],
  check: ({ answers: { base } }) => [
    ...[...base.families.values()].flatMap(inFamily),
    ...[...base.sequences.values()].flatMap((sequence) => inSequence(base, sequence)),
  ],
};

function inFamily(family: Entry<'families'>): Finding[] {
  const { identify, face } = family.data;
  const findings = identify.flatMap(({ control }, index) =>
    control === undefined ? [] : missing(family.data, control, family, ['identify', index, 'control']),
  );
  const area = face.controls.find(({ kind }) => kind === 'touch-area');
  if (area && !face.screen.touch) {
    findings.push(
      finding(
        family,
        ['face', 'screen', 'touch'],
        `The screen is said not to answer to touch, yet “${area.id}” is a touch area of it.`,
        'Write touch: true, or give the controls of this face their real kind.',
      ),
    );
  }
  return findings;
}

function inSequence(base: Base, sequence: Entry<'sequences'>): Finding[] {
  const family = base.families.get(sequence.data.family)?.data;
  if (!family) return [];
  const controls = new Map(family.face.controls.map((control) => [control.id, control]));
  return sequence.data.transitions.flatMap(({ action }, index) =>
    controlsOf(action).flatMap(({ id, path }) => {
      const at = ['transitions', index, 'action', ...path];
      const control = controls.get(id);
      if (!control) return missing(family, id, sequence, at);
      const help = misuse(action, control);
      if (help === undefined) return [];
      const verb = action.kind === 'tap' ? 'tapped' : action.kind === 'turn' ? 'turned' : 'pressed';
      return finding(
        sequence,
        at,
        `“${id}” is a ${control.kind.replace('-', ' ')} and cannot be ${verb}.`,
        help,
      );
    }),
  );
}

/** What to do where a control cannot be used in this way; undefined where it can. */
function misuse(action: SequenceAction, control: Control): string | undefined {
  const instead =
    control.kind === 'touch-area'
      ? 'A touch area is tapped (kind: tap)'
      : control.kind === 'key'
        ? 'A key is pressed (kind: press)'
        : 'A knob is turned (kind: turn) or pressed (kind: press)';
  const fits =
    action.kind === 'tap'
      ? control.kind === 'touch-area'
      : action.kind === 'turn'
        ? control.kind === 'knob'
        : action.kind !== 'press' || control.kind !== 'touch-area';
  return fits ? undefined : `${instead}; correct the step, or the control’s kind on the face.`;
}

function missing(
  family: Family,
  id: string,
  entry: Entry<'families'> | Entry<'sequences'>,
  path: DataPath,
): Finding[] {
  const known = family.face.controls.map((control) => control.id);
  if (known.includes(id)) return [];
  const guess = nearest(id, known);
  return [
    finding(
      entry,
      path,
      `The face of “${family.name}” has no control “${id}”.`,
      guess ? `Did you mean “${guess}”?` : `Its controls are: ${known.join(', ')}.`,
    ),
  ];
}

function finding(
  entry: Entry<'families'> | Entry<'sequences'>,
  path: DataPath,
  message: string,
  help: string,
): Finding {
  return { rule: 'unknown-control', severity: 'error', place: entry.place(path), message, help, related: [] };
}

function controlsOf(action: SequenceAction): { id: string; path: (string | number)[] }[] {
  if (action.kind === 'hold') return action.controls.map((id, index) => ({ id, path: ['controls', index] }));
  return 'control' in action ? [{ id: action.control, path: ['control'] }] : [];
}
