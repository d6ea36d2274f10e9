/** The hand-over of the answers from the command that publishes to the loaders that Astro runs. */
import type { Answers } from '../answers.ts';

/**
 * Astro loads the content configuration through its own module runner, so a module variable set by the
 * caller is not the one a loader sees. The global symbol registry is the one thing both share.
 */
const key = Symbol.for('readback.answers');

type Store = { [key]?: Answers };

/** The answers last handed over; undefined where no command has done so (`astro check`, `astro sync`). */
export function answersInStore(): Answers | undefined {
  return (globalThis as Store)[key];
}

/** Hands answers over; undefined takes them back. */
export function putAnswersInStore(answers: Answers | undefined): void {
  if (answers) (globalThis as Store)[key] = answers;
  else delete (globalThis as Store)[key];
}
