/** Finds the family a person means by `--unit`: its id, its name, or another name it goes by. */
import { type Base, CannotRun, type Entry, nearest } from '../base/index.ts';

/** @throws CannotRun where no family goes by that name. */
export function unitOf(base: Base, unit: string): Entry<'families'> {
  const wanted = unit.trim().toLowerCase();
  const families = [...base.families.values()];
  const found = families.find((family) =>
    [family.id, family.data.name, ...family.data.alsoCalled].some((name) => name.toLowerCase() === wanted),
  );
  if (found) return found;
  const ids = families.map((family) => family.id);
  const guess = nearest(wanted, ids);
  throw new CannotRun(
    `There is no unit “${unit}”.`,
    guess ? `Did you mean --unit ${guess}?` : `The units are: ${ids.join(', ')}.`,
  );
}
