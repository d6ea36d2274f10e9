/** Finds the family a person means by `--unit`: its id, its name, or another name it goes by. */
import { type Base, CannotRun, type Entry, familyNamed, nearest } from '../base/index.ts';

/** @throws CannotRun where no family goes by that name. */
export function unitOf(base: Base, unit: string): Entry<'families'> {
  const found = familyNamed(base, unit);
  if (found) return found;
  const ids = [...base.families.keys()];
  const guess = nearest(unit.trim().toLowerCase(), ids);
  throw new CannotRun(
    `There is no unit “${unit}”.`,
    guess ? `Did you mean --unit ${guess}?` : `The units are: ${ids.join(', ')}.`,
  );
}
