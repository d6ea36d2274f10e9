/** The moments at which a hold begins and ends, in plain words. */
import type { SequenceAction } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';

export type Moment = Extract<SequenceAction, { kind: 'hold' }>['begin'];

/** A moment as a short fact. */
export function momentWords(moment: Moment): string {
  const words: Readonly<Record<Moment, string>> = {
    'with-ignition': phrase('as the ignition goes on'),
    'prompt-shown': phrase('when the prompt is shown'),
    'prompt-gone': phrase('when the prompt is gone'),
    'screen-changes': phrase('when the screen changes'),
    'any-time': phrase('at any time'),
  };
  return words[moment];
}

/** When to begin a hold, as an order. */
export function beginWords(moment: Moment): string {
  const words: Readonly<Record<Moment, string>> = {
    'with-ignition': phrase('Hold first, then turn the ignition on.'),
    'prompt-shown': phrase('Hold from the moment the prompt shows, not before.'),
    'prompt-gone': phrase('Hold from the moment the prompt is gone, not before.'),
    'screen-changes': phrase('Hold from the moment the screen changes.'),
    'any-time': phrase('Begin when you are ready.'),
  };
  return words[moment];
}

/** When to let go, as an order; a hold that ends at any time ends when it has been long enough. */
export function endWords(moment: Moment): string {
  const words: Readonly<Record<Moment, string>> = {
    'with-ignition': phrase('As the ignition goes on, not before.'),
    'prompt-shown': phrase('As soon as the prompt shows, not before.'),
    'prompt-gone': phrase('As soon as the prompt is gone, not before.'),
    'screen-changes': phrase('As soon as the screen changes, not before.'),
    'any-time': phrase('When the count says so.'),
  };
  return words[moment];
}

/** How long to hold on, as an order. */
export function holdOnWords(moment: Moment): string {
  const words: Readonly<Record<Moment, string>> = {
    'with-ignition': phrase('Hold on until the ignition goes on, then let go.'),
    'prompt-shown': phrase('Hold on until the prompt shows, then let go.'),
    'prompt-gone': phrase('Hold on until the prompt is gone, then let go.'),
    'screen-changes': phrase('Hold on until the screen changes, then let go.'),
    'any-time': phrase('Let go now.'),
  };
  return words[moment];
}
