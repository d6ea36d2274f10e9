/** A count that runs while something is held or waited for: its phases, and what each says. */
import type { SequenceAction } from '../../schemas/index.ts';
import { type Moment, untilWords } from './moments.ts';

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
        return 'Get ready. Begin at zero.';
      case 'counting':
        return `Keep holding: at least ${secondsWords(leastSeconds)}.`;
      case 'enough':
        return end === 'any-time' ? 'Let go now.' : `Hold on until ${untilWords[end]}, then let go.`;
      case 'over':
        return `${secondsWords(mostSeconds)} are over: too long. Let go and start again.`;
    }
  }
  switch (phase) {
    case 'lead':
      return 'Get ready.';
    case 'counting':
      return `Wait: at least ${secondsWords(leastSeconds)}.`;
    case 'enough':
      return 'It may come at any moment. Look at the screen.';
    case 'over':
      return `${secondsWords(mostSeconds)} are over: it should have come. Start again.`;
  }
}

function secondsWords(seconds: number): string {
  return seconds === 1 ? '1 second' : `${seconds} seconds`;
}
