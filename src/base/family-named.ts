/** The family a person means by a word: its id, its name, or another name it goes by. */
import type { Base, Entry } from './base.ts';

/** Capitals and blanks at the ends aside; undefined where no family goes by that name. */
export function familyNamed(base: Base, name: string): Entry<'families'> | undefined {
  const wanted = name.trim().toLowerCase();
  return [...base.families.values()].find((family) =>
    [family.id, family.data.name, ...family.data.alsoCalled].some((one) => one.toLowerCase() === wanted),
  );
}
