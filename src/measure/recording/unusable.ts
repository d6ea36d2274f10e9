/** Why a recording cannot be measured, in the words of the person who can record it again. */
import type { UnusableReason } from '../../../schemas/results/sweep.ts';

/** A recording that cannot be measured: `message` says what is wrong with it, `help` what to do next. */
export class UnusableRecording extends Error {
  readonly reason: UnusableReason;
  readonly help: string;

  constructor(reason: UnusableReason, message: string, help: string) {
    super(message);
    this.reason = reason;
    this.help = help;
  }
}
