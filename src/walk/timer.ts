/** A count that runs while something is held or waited for: its phases, and what each says. */
import type { SequenceAction } from '../../schemas/index.ts';
import { countPhrase, phrase } from '../words/index.ts';
import { holdOnWords, type Moment } from './moments.ts';

export interface Timing {
  readonly kind: 'hold' | 'wait';
  readonly leastSeconds: number;
  readonly mostSeconds: number;
  /** The moment to let go; a wait ends with what is seen. */
  readonly end: Moment;
}

/** lead: counting in; counting: not yet long enough; enough: the end may come; over: too long. */
export type TimerPhase = 'lead' | 'counting' | 'enough' | 'over';

/** How an action is timed; undefined where it is not. */
export function timingOf(action: SequenceAction): Timing | undefined {
  if (action.kind !== 'hold' && action.kind !== 'wait') return undefined;
  const { kind, leastSeconds, mostSeconds } = action;
  return { kind, leastSeconds, mostSeconds, end: kind === 'hold' ? action.end : 'screen-changes' };
}

/** The phase after so many seconds; below zero the count has not begun. */
export function phaseAt({ leastSeconds, mostSeconds }: Timing, seconds: number): TimerPhase {
  if (seconds < 0) return 'lead';
  if (seconds < leastSeconds) return 'counting';
  // Where least and most are the same there is a second to act in.
  return seconds < Math.max(mostSeconds, leastSeconds + 1) ? 'enough' : 'over';
}

/** What a phase says: shown, announced when the phase begins, and read aloud. */
export function timerWords({ kind, leastSeconds, mostSeconds, end }: Timing, phase: TimerPhase): string {
  if (kind === 'hold') {
    switch (phase) {
      case 'lead':
        return phrase('Get ready. Begin at zero.');
      case 'counting':
        return countPhrase(
          leastSeconds,
          'Keep holding: at least {count} second.',
          'Keep holding: at least {count} seconds.',
        );
      case 'enough':
        return holdOnWords(end);
      case 'over':
        return countPhrase(
          mostSeconds,
          '{count} second is over: too long. Let go and start again.',
          '{count} seconds are over: too long. Let go and start again.',
        );
    }
  }
  switch (phase) {
    case 'lead':
      return phrase('Get ready.');
    case 'counting':
      return countPhrase(leastSeconds, 'Wait: at least {count} second.', 'Wait: at least {count} seconds.');
    case 'enough':
      return phrase('It may come at any moment. Look at the screen.');
    case 'over':
      return countPhrase(
        mostSeconds,
        '{count} second is over: it should have come. Start again.',
        '{count} seconds are over: it should have come. Start again.',
      );
  }
}
