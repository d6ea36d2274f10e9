/** The Base: every entry of a content folder, validated and linked, never changed after it is made. */
import type { Root } from 'mdast';
import { type EntryData, type Kind, markdownKinds, type SetAside } from '../../schemas/index.ts';
import type { Place } from './finding.ts';
import { LazyMap } from './lazy-map.ts';
import type { BenchReading, ReadingTable } from './readings.ts';
import type { TextFile } from './text-file.ts';
import type { DataPath, Positions } from './yaml.ts';

/** What parsing a file gives beside its data. */
export interface Parsed {
  readonly positions: Positions;
  readonly body?: Root | undefined;
}

/** One entry: its data, and where in its file each part of the data stands. */
export class Entry<K extends Kind = Kind> {
  readonly kind: K;
  /** The path inside the kind's folder without ending: `brasslight/8b0s-i5z`. */
  readonly id: string;
  /** The path below the content folder, with forward slashes. */
  readonly file: string;
  readonly data: EntryData<K>;
  /** The whole file. */
  readonly source: TextFile;
  readonly #parse: () => Parsed;
  #parsed: Parsed | undefined;

  /** @param parse reads the file again where data came from an earlier run: most entries are never asked more. */
  constructor(kind: K, id: string, source: TextFile, data: EntryData<K>, parse: () => Parsed) {
    this.kind = kind;
    this.id = id;
    this.file = source.file;
    this.data = data;
    this.source = source;
    this.#parse = parse;
  }

  /** A digest of the whole file. */
  get digest(): string {
    return this.source.digest;
  }

  /** The Markdown body of families and guides. */
  get body(): Root | undefined {
    // Entries without one are not read again to find that out.
    return markdownKinds.includes(this.kind) ? this.#whole().body : undefined;
  }

  /** Where the value at `path` stands, or its key; the nearest existing parent where it does not exist. */
  place(path: DataPath = [], part: 'key' | 'value' = 'value'): Place {
    return this.#whole().positions.place(path, part);
  }

  #whole(): Parsed {
    this.#parsed ??= this.#parse();
    return this.#parsed;
  }

  /** The value at `path` as it is written in the file, quotes and line breaks included. */
  sourceOf(path: DataPath): string | undefined {
    return this.#whole().positions.sourceOf(path);
  }
}

/** All entries of one kind by id, in the order of their files. */
export type EntryMap<K extends Kind> = ReadonlyMap<string, Entry<K>>;

export interface Base {
  /** The content folder as given. */
  readonly folder: string;
  /** site.yaml; undefined where it is missing or does not fit its schema. */
  readonly site: Entry<'site'> | undefined;
  readonly families: EntryMap<'families'>;
  readonly sequences: EntryMap<'sequences'>;
  readonly profiles: EntryMap<'profiles'>;
  /** Bench sessions: conditions here, readings in `readings` under the same id. */
  readonly outputs: EntryMap<'outputs'>;
  readonly readings: ReadonlyMap<string, ReadingTable>;
  readonly sources: EntryMap<'sources'>;
  readonly statements: EntryMap<'statements'>;
  readonly guides: EntryMap<'guides'>;
  readonly plans: EntryMap<'plans'>;
  readonly tables: EntryMap<'tables'>;
  readonly equipment: EntryMap<'equipment'>;
  /** Findings set aside with a reason; they change nothing but what the check reports. */
  readonly exceptions: EntryMap<'exceptions'>;
  /** Texts of the interface by language; they change nothing but what the pages say. */
  readonly words: EntryMap<'words'>;

  readonly profilesOfFamily: ReadonlyMap<string, readonly Entry<'profiles'>[]>;
  readonly sequencesOfFamily: ReadonlyMap<string, readonly Entry<'sequences'>[]>;
  /** The sessions that measured a profile, oldest first. */
  readonly sessionsOfProfile: ReadonlyMap<string, readonly Entry<'outputs'>[]>;
  readonly statementsOfProfile: ReadonlyMap<string, readonly Entry<'statements'>[]>;
}

type OrderedKind = 'guides' | 'plans' | 'tables' | 'equipment';

/** Compares two guides, plans or tables by their place in lists, then by id. */
export function byOrder(a: Entry<OrderedKind>, b: Entry<OrderedKind>): number {
  return a.data.order - b.data.order || a.id.localeCompare(b.id);
}

/** Why a session's readings of a profile are set aside; undefined where they count. */
export function setAsideFor(session: Entry<'outputs'>, profile: string): SetAside | undefined {
  return session.data.setAside.find(({ profiles }) => !profiles || profiles.includes(profile));
}

/** What one session read of a profile. */
export interface SessionReadings {
  readonly session: Entry<'outputs'>;
  readonly readings: readonly BenchReading[];
}

const lastAskedFor = new WeakMap<Base, LazyMap<readonly SessionReadings[]>>();

/** Profiles whose readings are kept as objects: one family after the other is looked at by several rules. */
const profilesKept = 500;

/** The readings of one profile that count, by session, oldest session first; those set aside are left out. */
export function readingsOfProfile(base: Base, profile: string): readonly SessionReadings[] {
  let kept = lastAskedFor.get(base);
  if (!kept) {
    kept = new LazyMap(base.sessionsOfProfile.keys(), (id) => readingsBySession(base, id), profilesKept);
    lastAskedFor.set(base, kept);
  }
  return kept.get(profile) ?? [];
}

function readingsBySession(base: Base, profile: string): SessionReadings[] {
  return (base.sessionsOfProfile.get(profile) ?? [])
    .filter((session) => !setAsideFor(session, profile))
    .map((session) => ({
      session,
      readings: base.readings.get(session.id)?.readingsOf(profile) ?? [],
    }));
}
