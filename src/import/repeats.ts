/** Readings of a sheet with where they stand, and the numbers of those read more than once. */
import type { Reading } from '../../schemas/index.ts';

export interface SheetReading extends Reading {
  readonly row: number;
  readonly line: number;
  /** The column of its volts. */
  readonly at: number;
}

/** A reading whose repeat may not be numbered yet. */
export type ReadingDraft = Omit<SheetReading, 'repeat'> & { readonly repeat: number | undefined };

/** Numbers repeats that have none: the lowest not taken, in the order of the sheet. */
export function withRepeats(drafts: readonly ReadingDraft[]): {
  readings: readonly SheetReading[];
  numbered: number;
} {
  if (drafts.every(isNumbered)) return { readings: [...drafts], numbered: 0 };
  const taken = new Map<string, Set<number>>();
  const keyOf = ({ profile, channel, step, hz }: ReadingDraft): string =>
    `${profile} ${channel} ${step} ${hz}`;
  for (const draft of drafts) {
    if (draft.repeat === undefined) continue;
    const numbers = taken.get(keyOf(draft)) ?? new Set<number>();
    taken.set(keyOf(draft), numbers.add(draft.repeat));
  }
  const next = new Map<string, number>();
  let numbered = 0;
  const readings = drafts.map((draft): SheetReading => {
    if (isNumbered(draft)) return draft;
    const key = keyOf(draft);
    let repeat = next.get(key) ?? 1;
    while (taken.get(key)?.has(repeat)) repeat += 1;
    next.set(key, repeat + 1);
    if (repeat > 1) numbered += 1;
    return { ...draft, repeat };
  });
  return { readings, numbered };
}

function isNumbered(draft: ReadingDraft): draft is SheetReading {
  return draft.repeat !== undefined;
}
