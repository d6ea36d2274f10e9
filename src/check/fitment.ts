/** The years of every model line, over all families: what the rules on fitment share. */
import type { Base, DataPath, Entry } from '../base/index.ts';

/** One line of a family's fitment. */
export interface FittedYears {
  readonly family: Entry<'families'>;
  readonly path: DataPath;
  readonly model: string;
  readonly fromYear: number;
  readonly toYear: number;
}

/** Names are the same whatever their capitals and spaces. */
export function sameName(name: string): string {
  return name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
}

/** A family's lines of fitment, those that end before they begin left out. */
export function yearsOfFamily(family: Entry<'families'>): FittedYears[] {
  return family.data.fitment.flatMap(({ model, fromYear, toYear }, index) =>
    fromYear <= toYear ? [{ family, path: ['fitment', index], model, fromYear, toYear }] : [],
  );
}

/** Lines of fitment by model line, the earliest first. */
export function byModel(base: Base): FittedYears[][] {
  const models = new Map<string, FittedYears[]>();
  for (const family of base.families.values()) {
    for (const years of yearsOfFamily(family)) {
      const key = `${sameName(family.data.maker)}\n${sameName(years.model)}`;
      const known = models.get(key);
      if (known) known.push(years);
      else models.set(key, [years]);
    }
  }
  return [...models.values()].map((years) =>
    years.sort((a, b) => a.fromYear - b.fromYear || a.toYear - b.toYear),
  );
}

/** `2015`, or `2015 to 2018`. */
export function yearSpan(from: number, to: number): string {
  return from === to ? String(from) : `${from} to ${to}`;
}
