/** The part of an entry that answers follow from; the rest of it is wording. */
import { isDeepStrictEqual } from 'node:util';
import type { EntryData, Kind } from '../../schemas/index.ts';
import type { DataPath, Entry } from '../base/index.ts';
import type { EntryPair } from './states.ts';

type Decisive = { readonly [K in Kind]?: (data: EntryData<K>) => object };

/** For each kind that has a say in answers, the fields they follow from, at the paths they have in the entry. */
const parts: Decisive = {
  families: ({ output, volume }) => ({ output, volume }),
  profiles: ({ system, origin }) => ({ system, origin }),
  outputs: ({ source: _source, bench: _bench, takenBy: _by, method: _method, ...rest }) => {
    const { name: _name, ...instrument } = rest.instrument;
    const { from: _from, ...signal } = rest.signal;
    return { ...rest, instrument, signal, setAside: rest.setAside.map(({ profiles }) => ({ profiles })) };
  },
  plans: ({ feeds, input, rear, mostBassBoostDb, highestLowCornerHz, canCorrect }) => {
    return { feeds, input, rear, mostBassBoostDb, highestLowCornerHz, canCorrect };
  },
  equipment: (data) =>
    data.is === 'amplifier'
      ? {
          is: data.is,
          place: data.place,
          leastVolts: data.leastVolts,
          mostVolts: data.mostVolts,
          equaliser: data.equaliser,
        }
      : { is: data.is, place: data.place, lowestHz: data.lowestHz, mostBassBoostDb: data.mostBassBoostDb },
  tables: ({ hit, aggregate, decides, inputs, outputs, rules }) => ({
    hit,
    aggregate,
    decides,
    inputs: inputs.map((input) => ({ ...input, label: '', question: '' })),
    outputs: outputs.map((output) => ({ ...output, label: '' })),
    rules: rules.map(({ id, when, give }) => ({ id, when, give })),
  }),
};

function decisiveOf<K extends Kind>({ kind, data }: Entry<K>): object | undefined {
  return (parts[kind] as ((data: EntryData<K>) => object) | undefined)?.(data);
}

/** Whether the two states of an entry differ in what answers follow from. */
export function differsDecisively<K extends Kind>({ before, now }: EntryPair<K>): boolean {
  if (!before || !now) return before !== now && decisiveOf((before ?? now) as Entry<K>) !== undefined;
  if (before.digest === now.digest) return false;
  return !isDeepStrictEqual(decisiveOf(before), decisiveOf(now));
}

/**
 * The paths, in the entry as it is now, of the fields answers follow from and that differ; of a list whose members
 * have ids, each member is held against that of its id. Empty where the entry was added or removed.
 */
export function decisiveChanges<K extends Kind>({ before, now }: EntryPair<K>): DataPath[] {
  if (!before || !now) return [];
  return differences(decisiveOf(before), decisiveOf(now), []);
}

function differences(before: unknown, now: unknown, path: DataPath): DataPath[] {
  if (isDeepStrictEqual(before, now)) return [];
  if (Array.isArray(before) && Array.isArray(now)) return listDifferences(before, now, path);
  if (!isRecord(before) || !isRecord(now)) return [path];
  return [...new Set([...Object.keys(now), ...Object.keys(before)])].flatMap((key) =>
    differences(before[key], now[key], [...path, key]),
  );
}

function listDifferences(before: readonly unknown[], now: readonly unknown[], path: DataPath): DataPath[] {
  const [idsBefore, idsNow] = [idsOf(before), idsOf(now)];
  if (!idsBefore || !idsNow) {
    if (before.length !== now.length) return [path];
    return now.flatMap((one, at) => differences(before[at], one, [...path, at]));
  }
  const changed = idsNow.flatMap((id, at): DataPath[] => {
    const was = idsBefore.indexOf(id);
    return was < 0 ? [[...path, at]] : differences(before[was], now[at], [...path, at]);
  });
  // A member taken out, or another order, shows in the list alone.
  return changed.length > 0 ? changed : [path];
}

function idsOf(list: readonly unknown[]): unknown[] | undefined {
  const ids = list.map((one) => (isRecord(one) ? one.id : undefined));
  return ids.includes(undefined) ? undefined : ids;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
