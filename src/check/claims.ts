/** Answers without the readings that a rule has found fault with, so that later rules do not echo it. */
import { type Answers, answersOf } from '../answers.ts';
import type { Base, ReadingTable } from '../base/index.ts';

/** The answers as they would be without some readings, by id; see {@link answersOf} for `outputsAtOnce`. */
export function withoutReadings(
  answers: Answers,
  claimed: ReadonlySet<string>,
  outputsAtOnce?: number,
): Answers {
  const readings = new Map<string, ReadingTable>();
  for (const [session, table] of answers.base.readings) {
    readings.set(session, table.without(claimed));
  }
  const base: Base = Object.freeze({ ...answers.base, readings });
  return answersOf(base, outputsAtOnce);
}
