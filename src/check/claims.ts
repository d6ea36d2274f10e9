/** Answers without the readings that a rule has found fault with, so that later rules do not echo it. */
import { type Answers, answersOf } from '../answers.ts';
import type { Base, ReadingTable } from '../base/index.ts';

/** The answers as they would be without some readings, by id; what does not hang on them is kept. */
export function withoutReadings(answers: Answers, claimed: ReadonlySet<string>): Answers {
  const readings = new Map<string, ReadingTable>();
  const touched = new Set<string>();
  for (const [session, table] of answers.base.readings) {
    const [rest, profiles] = table.without(claimed);
    readings.set(session, rest);
    for (const profile of profiles) touched.add(profile);
  }
  if (touched.size === 0) return answers;
  const base: Base = Object.freeze({ ...answers.base, readings });
  return answersOf(base, { answers, touched });
}
