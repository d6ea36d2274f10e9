/** What is done in a step, in few words. */
import type { Family, SequenceAction } from '../../schemas/index.ts';
import { momentWords } from '../walk/index.ts';
import { countPhrase, phrase } from '../words/index.ts';
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
      return [{ label: phrase('Ignition'), text: positionWord(action.position) }];
    case 'wait':
      return [{ label: phrase('Wait'), text: secondsRange(action.leastSeconds, action.mostSeconds) }];
    case 'press':
    case 'tap':
      return [
        {
          label: action.kind === 'tap' ? phrase('Tap') : phrase('Press'),
          text:
            action.times === 1
              ? label(action.control)
              : countPhrase(action.times, '{control}, {count} time', '{control}, {count} times', {
                  control: label(action.control),
                }),
        },
      ];
    case 'turn':
      return [
        {
          label: phrase('Turn'),
          text: countPhrase(
            action.clicks,
            '{control}, {direction}, {count} click',
            '{control}, {direction}, {count} clicks',
            { control: label(action.control), direction: directionWord(action.direction) },
          ),
        },
      ];
    case 'hold':
      return [
        { label: phrase('Hold'), text: action.controls.map(label).join(' + ') },
        { label: phrase('From'), text: momentWords(action.begin) },
        { label: phrase('Until'), text: momentWords(action.end) },
        { label: phrase('Takes'), text: secondsRange(action.leastSeconds, action.mostSeconds) },
      ];
  }
}

/** The action in one short line, for a drawing or a list. */
export function actionLine(action: SequenceAction, family: Family): string {
  const label = labelsOf(family);
  switch (action.kind) {
    case 'ignition':
      return phrase('Ignition {position}', { position: positionWord(action.position) });
    case 'wait':
      return phrase('Wait {time}', { time: secondsRange(action.leastSeconds, action.mostSeconds) });
    case 'press':
    case 'tap': {
      const times = action.times === 1 ? '' : `, ${action.times}\u00a0×`;
      const control = `${label(action.control)}${times}`;
      return action.kind === 'tap'
        ? phrase('Tap {control}', { control })
        : phrase('Press {control}', { control });
    }
    case 'turn':
      return phrase('Turn {control} {direction}, {clicks}\u00a0×', {
        control: label(action.control),
        direction: directionWord(action.direction),
        clicks: action.clicks,
      });
    case 'hold':
      return phrase('Hold {controls}, {time}', {
        controls: action.controls.map(label).join(' + '),
        time: secondsRange(action.leastSeconds, action.mostSeconds),
      });
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
  return least === most ? `${least}\u00a0s` : phrase('{least} to {most}\u00a0s', { least, most });
}

function positionWord(position: Extract<SequenceAction, { kind: 'ignition' }>['position']): string {
  const words = { on: phrase('on'), off: phrase('off'), accessory: phrase('accessory') };
  return words[position];
}

function directionWord(direction: Extract<SequenceAction, { kind: 'turn' }>['direction']): string {
  return direction === 'clockwise' ? phrase('clockwise') : phrase('anticlockwise');
}
