/** Which entries and sheets were touched, and whether in what answers follow from or in wording alone. */
import type { Kind } from '../../schemas/index.ts';
import { linkedKinds } from '../base/index.ts';
import { differsDecisively } from './decisive.ts';
import type { States } from './states.ts';

export interface EntryChange {
  readonly kind: Kind | 'readings';
  /** The file now (before, where it is gone), below the content folder. */
  readonly file: string;
  readonly what: 'added' | 'removed' | 'renamed' | 'edited';
  /** Of a renamed one, the file it was. */
  readonly formerFile?: string;
  /** Whether answers may follow from what differs. */
  readonly decisive: boolean;
}

/** Every entry and sheet that was touched, in the order of the files of each kind. */
export function entryChanges(states: States): EntryChange[] {
  const entries = (['site', ...linkedKinds] as const).flatMap((kind) =>
    [...states.pairs(kind)].flatMap(([, pair]): EntryChange[] => {
      const { before, now } = pair;
      const what = whatBecame(before, now);
      if (!what) return [];
      const renamed = what === 'renamed' && before ? { formerFile: before.file } : {};
      return [
        { kind, file: (now ?? before)?.file ?? '', what, ...renamed, decisive: differsDecisively(pair) },
      ];
    }),
  );
  return [...entries, ...sheetChanges(states)];
}

function sheetChanges(states: States): EntryChange[] {
  const { before, now } = states;
  const gone = [...before.base.readings.keys()].map((id) => states.idNow('outputs', id));
  return [...new Set([...now.base.readings.keys(), ...gone])].flatMap((id): EntryChange[] => {
    const was = before.base.readings.get(states.idBefore('outputs', id));
    const is = now.base.readings.get(id);
    const what = whatBecame(
      was && { file: was.source.file, digest: was.digest },
      is && { file: is.source.file, digest: is.digest },
    );
    if (!what) return [];
    const file = (is ?? was)?.source.file ?? '';
    const renamed = what === 'renamed' && was ? { formerFile: was.source.file } : {};
    return [{ kind: 'readings', file, what, ...renamed, decisive: was?.digest !== is?.digest }];
  });
}

interface FileState {
  readonly file: string;
  readonly digest: string;
}

function whatBecame(
  before: FileState | undefined,
  now: FileState | undefined,
): EntryChange['what'] | undefined {
  if (!before || !now) return before ? 'removed' : now && 'added';
  if (before.file !== now.file) return 'renamed';
  return before.digest === now.digest ? undefined : 'edited';
}
