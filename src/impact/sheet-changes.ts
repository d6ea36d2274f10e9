/** What became of the rows of a sheet, profile by profile. */
import type { BenchReading, ReadingTable } from '../base/index.ts';
import type { States } from './states.ts';

/** The rows of one profile in one session that differ. */
export interface RowChanges {
  /** Ids of readings that were not there. */
  readonly added: readonly string[];
  /** Ids of readings whose values differ. */
  readonly changed: readonly string[];
  /** How many are not there any more. */
  readonly removed: number;
}

const none: RowChanges = { added: [], changed: [], removed: 0 };

/** Compares sheets; each is looked at once. */
export class SheetChanges {
  readonly #states: States;
  readonly #known = new Map<string, RowChanges>();

  constructor(states: States) {
    this.#states = states;
  }

  /** The rows of a profile in a session that differ; both by their ids now. */
  of(session: string, profile: string): RowChanges {
    const key = `${session} ${profile}`;
    const known = this.#known.get(key);
    if (known) return known;
    const states = this.#states;
    const before = states.before.base.readings.get(states.idBefore('outputs', session));
    const now = states.now.base.readings.get(session);
    const isSame = before?.digest === now?.digest && states.idBefore('profiles', profile) === profile;
    const changes = isSame ? none : this.#compare(before, now, profile);
    this.#known.set(key, changes);
    return changes;
  }

  #compare(before: ReadingTable | undefined, now: ReadingTable | undefined, profile: string): RowChanges {
    const left = new Map<string, BenchReading[]>();
    for (const reading of before?.readingsOf(this.#states.idBefore('profiles', profile)) ?? []) {
      left.set(keyOf(reading), [...(left.get(keyOf(reading)) ?? []), reading]);
    }
    const [added, changed]: [string[], string[]] = [[], []];
    for (const reading of now?.readingsOf(profile) ?? []) {
      const was = left.get(keyOf(reading))?.shift();
      if (!was) added.push(reading.id);
      else if (was.voltsRms !== reading.voltsRms || was.thdPercent !== reading.thdPercent) {
        changed.push(reading.id);
      }
    }
    const removed = [...left.values()].reduce((sum, some) => sum + some.length, 0);
    return { added, changed, removed };
  }
}

function keyOf({ channel, step, hz, repeat }: BenchReading): string {
  return `${channel} ${step} ${hz} ${repeat}`;
}

/** Whether any row differs. */
export function hasRowChanges({ added, changed, removed }: RowChanges): boolean {
  return added.length + changed.length + removed > 0;
}

/** The rows of a session that a profile’s answers may have changed by: its own, else those of others of its sheet. */
export function rowsBehind(
  { before, now }: States,
  sheets: SheetChanges,
  session: string,
  profile: string,
): RowChanges {
  const own = sheets.of(session, profile);
  if (hasRowChanges(own)) return own;
  const measured = [now, before].flatMap(({ base }) => base.readings.get(session)?.profiles ?? []);
  const all = [...new Set(measured)].map((one) => sheets.of(session, one)).filter(hasRowChanges);
  return {
    added: all.flatMap(({ added }) => added),
    changed: all.flatMap(({ changed }) => changed),
    removed: all.reduce((sum, { removed }) => sum + removed, 0),
  };
}
