/** The moments at which a hold begins and ends, in plain words. */
import type { SequenceAction } from '../../schemas/index.ts';

export type Moment = Extract<SequenceAction, { kind: 'hold' }>['begin'];

/** A moment as a short fact. */
export const momentWords: Readonly<Record<Moment, string>> = {
  'with-ignition': 'as the ignition goes on',
  'prompt-shown': 'when the prompt is shown',
  'prompt-gone': 'when the prompt is gone',
  'screen-changes': 'when the screen changes',
  'any-time': 'at any time',
};

/** When to begin a hold, as an order. */
export const beginWords: Readonly<Record<Moment, string>> = {
  'with-ignition': 'Hold first, then turn the ignition on.',
  'prompt-shown': 'Hold from the moment the prompt shows, not before.',
  'prompt-gone': 'Hold from the moment the prompt is gone, not before.',
  'screen-changes': 'Hold from the moment the screen changes.',
  'any-time': 'Begin when you are ready.',
};

/** When to let go, as an order; a hold that ends at any time ends when it has been long enough. */
export const endWords: Readonly<Record<Moment, string>> = {
  'with-ignition': 'As the ignition goes on, not before.',
  'prompt-shown': 'As soon as the prompt shows, not before.',
  'prompt-gone': 'As soon as the prompt is gone, not before.',
  'screen-changes': 'As soon as the screen changes, not before.',
  'any-time': 'When the count says so.',
};

/** What to hold on for, after “Hold on until”. */
export const untilWords: Readonly<Record<Exclude<Moment, 'any-time'>, string>> = {
  'with-ignition': 'the ignition goes on',
  'prompt-shown': 'the prompt shows',
  'prompt-gone': 'the prompt is gone',
  'screen-changes': 'the screen changes',
};
