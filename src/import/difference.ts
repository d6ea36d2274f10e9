/** What a sheet changes of the readings a session has. */
import type { Reading } from '../../schemas/index.ts';

export interface Difference {
  readonly added: readonly Reading[];
  readonly removed: readonly Reading[];
  readonly changed: readonly { readonly before: Reading; readonly now: Reading }[];
}

/** Readings are the same where profile, output, step, frequency and number of the repeat are. Their order is no matter. */
export function readingsDifference(before: Iterable<Reading>, now: Iterable<Reading>): Difference {
  const old = new Map<string, Reading>();
  for (const reading of before) old.set(keyOf(reading), reading);
  const added: Reading[] = [];
  const changed: { before: Reading; now: Reading }[] = [];
  for (const reading of now) {
    const key = keyOf(reading);
    const was = old.get(key);
    old.delete(key);
    if (!was) added.push(reading);
    else if (was.voltsRms !== reading.voltsRms || was.thdPercent !== reading.thdPercent) {
      changed.push({ before: was, now: reading });
    }
  }
  return { added, removed: [...old.values()], changed };
}

export function isSame({ added, removed, changed }: Difference): boolean {
  return added.length + removed.length + changed.length === 0;
}

function keyOf({ profile, channel, step, hz, repeat }: Reading): string {
  return `${profile} ${channel} ${step} ${hz} ${repeat}`;
}
