/** Two states of one content, and which entry of the one is which of the other. */
import type { Kind } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { allEntries, type Entry, type EntryMap } from '../base/index.ts';

/** A file of the content that has another path now, both below the content folder. */
export interface Rename {
  readonly from: string;
  readonly to: string;
}

/** One entry in both states; one side is missing where it was added or removed. */
export interface EntryPair<K extends Kind = Kind> {
  readonly before: Entry<K> | undefined;
  readonly now: Entry<K> | undefined;
}

/** The two states. Entries are one where their file kept its path or was renamed, or a profile names it `formerly`. */
export class States {
  readonly before: Answers;
  readonly now: Answers;
  /** For each kind, ids before by ids now, where they differ. */
  readonly #former = new Map<Kind, Map<string, string>>();

  constructor(before: Answers, now: Answers, renames: readonly Rename[] = []) {
    this.before = before;
    this.now = now;
    if (renames.length > 0) {
      const [entriesBefore, entriesNow] = [entriesByFile(before), entriesByFile(now)];
      for (const { from, to } of renames) {
        const [was, is] = [entriesBefore.get(from), entriesNow.get(to)];
        if (was && is && was.kind === is.kind) this.#rename(is.kind, was.id, is.id);
      }
    }
    for (const { id, data } of now.base.profiles.values()) {
      for (const former of data.formerly) this.#rename('profiles', former, id);
    }
  }

  #rename(kind: Kind, was: string, is: string): void {
    const ids = this.#former.get(kind) ?? new Map<string, string>();
    this.#former.set(kind, ids);
    const isGone = !this.#entries(this.now, kind).has(was) && this.#entries(this.before, kind).has(was);
    const isNew = !this.#entries(this.before, kind).has(is);
    if (isGone && isNew && !ids.has(is) && ![...ids.values()].includes(was)) ids.set(is, was);
  }

  #entries<K extends Kind>({ base }: Answers, kind: K): EntryMap<K> {
    if (kind === 'site') return new Map(base.site ? [['site', base.site]] : []) as unknown as EntryMap<K>;
    return base[kind as Exclude<Kind, 'site'>] as unknown as EntryMap<K>;
  }

  /** The id an entry of now had before, whether it was there or not. */
  idBefore(kind: Kind, idNow: string): string {
    return this.#former.get(kind)?.get(idNow) ?? idNow;
  }

  /** The id an entry of before has now, whether it is there or not. */
  idNow(kind: Kind, idBefore: string): string {
    for (const [is, was] of this.#former.get(kind) ?? []) if (was === idBefore) return is;
    return idBefore;
  }

  /** An entry in both states, by its id now (before, where it is gone). */
  pair<K extends Kind>(kind: K, id: string): EntryPair<K> {
    return {
      before: this.#entries(this.before, kind).get(this.idBefore(kind, id)),
      now: this.#entries(this.now, kind).get(id),
    };
  }

  /** Every entry of a kind: those there now in their order, then those that are gone; by id now. */
  pairs<K extends Kind>(kind: K): Map<string, EntryPair<K>> {
    const ids = [...this.#entries(this.now, kind).keys()];
    const gone = [...this.#entries(this.before, kind).keys()].map((id) => this.idNow(kind, id));
    return new Map([...new Set([...ids, ...gone])].map((id) => [id, this.pair(kind, id)]));
  }
}

function entriesByFile({ base }: Answers): Map<string, Entry> {
  return new Map([...allEntries(base)].map((one) => [one.file, one]));
}
