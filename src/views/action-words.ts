/** What is done in a step, in few words. */
import type { Family, SequenceAction } from '../../schemas/index.ts';
import { momentWords } from '../walk/index.ts';
import type { Fact } from './session-conditions.ts';

/** Ids of the controls a step uses. */
export function controlsOf(action: SequenceAction): readonly string[] {
  if (action.kind === 'hold') return action.controls;
  return 'control' in action ? [action.control] : [];
}

/** The action of a step in facts short enough to be read from a phone at arm’s length. */
export function actionFacts(action: SequenceAction, family: Family): Fact[] {
  const label = labelsOf(family);
  switch (action.kind) {
    case 'ignition':
      return [{ label: 'Ignition', text: action.position }];
    case 'wait':
      return [{ label: 'Wait', text: secondsRange(action.leastSeconds, action.mostSeconds) }];
    case 'press':
    case 'tap':
      return [
        {
          label: action.kind === 'tap' ? 'Tap' : 'Press',
          text:
            action.times === 1 ? label(action.control) : `${label(action.control)}, ${action.times} times`,
        },
      ];
    case 'turn':
      return [
        {
          label: 'Turn',
          text: `${label(action.control)}, ${action.direction}, ${action.clicks} ${action.clicks === 1 ? 'click' : 'clicks'}`,
        },
      ];
    case 'hold':
      return [
        { label: 'Hold', text: action.controls.map(label).join(' + ') },
        { label: 'From', text: momentWords[action.begin] },
        { label: 'Until', text: momentWords[action.end] },
        { label: 'Takes', text: secondsRange(action.leastSeconds, action.mostSeconds) },
      ];
  }
}

/** The action in one short line, for a drawing or a list. */
export function actionLine(action: SequenceAction, family: Family): string {
  const label = labelsOf(family);
  switch (action.kind) {
    case 'ignition':
      return `Ignition ${action.position}`;
    case 'wait':
      return `Wait ${secondsRange(action.leastSeconds, action.mostSeconds)}`;
    case 'press':
    case 'tap': {
      const verb = action.kind === 'tap' ? 'Tap' : 'Press';
      return `${verb} ${label(action.control)}${action.times === 1 ? '' : `, ${action.times}\u00a0×`}`;
    }
    case 'turn':
      return `Turn ${label(action.control)} ${action.direction}, ${action.clicks}\u00a0×`;
    case 'hold':
      return `Hold ${action.controls.map(label).join(' + ')}, ${secondsRange(action.leastSeconds, action.mostSeconds)}`;
  }
}

/** Entries tell a choice as “Or wait …”; as a step of its own it has nothing before it. */
export function withoutOr(say: string): string {
  return say.replace(/^Or (\p{Letter})/u, (_, letter: string) => letter.toUpperCase());
}

function labelsOf(family: Family): (id: string) => string {
  return (id) => family.face.controls.find((one) => one.id === id)?.label ?? id;
}

function secondsRange(least: number, most: number): string {
  return least === most ? `${least}\u00a0s` : `${least} to ${most}\u00a0s`;
}
