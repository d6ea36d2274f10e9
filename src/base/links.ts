/** Which entries an entry names, and where it names them. */
import type { Kind, TableEntryRule } from '../../schemas/index.ts';
import { kindNouns, markdownKinds } from '../../schemas/index.ts';
import type { Base, Entry } from './base.ts';
import { bodyLinks } from './body-links.ts';
import type { Finding } from './finding.ts';
import type { Link } from './link.ts';
import { nearest } from './nearest.ts';

/** Every link an entry holds, in the order of its fields, then of its body. */
export function linksOf(entry: Entry): Link[] {
  return [...fieldLinks(entry), ...bodyLinks(entry)];
}

function fieldLinks(entry: Entry): Link[] {
  if (
    isKind(entry, 'families') ||
    isKind(entry, 'guides') ||
    isKind(entry, 'plans') ||
    isKind(entry, 'equipment')
  ) {
    return sourceLinks(entry.data.sources);
  }
  if (isKind(entry, 'sequences')) {
    return [
      { kind: 'families', id: entry.data.family, path: ['family'] },
      ...sourceLinks(entry.data.sources),
    ];
  }
  if (isKind(entry, 'profiles')) {
    const { family, sameAs, tellApart, sources } = entry.data;
    return [
      { kind: 'families', id: family, path: ['family'] },
      ...(sameAs === undefined ? [] : [{ kind: 'profiles', id: sameAs, path: ['sameAs'] } as const]),
      ...tellApart.map(
        (one, index): Link => ({ kind: 'profiles', id: one.from, path: ['tellApart', index, 'from'] }),
      ),
      ...sourceLinks(sources),
    ];
  }
  if (isKind(entry, 'outputs')) {
    return [
      { kind: 'sources', id: entry.data.source, path: ['source'] },
      ...entry.data.setAside.flatMap(({ profiles }, index) =>
        (profiles ?? []).map(
          (id, at): Link => ({ kind: 'profiles', id, path: ['setAside', index, 'profiles', at] }),
        ),
      ),
    ];
  }
  if (isKind(entry, 'tables')) {
    const { rules, sources } = entry.data;
    return [...sourceLinks(sources), ...rules.flatMap(ruleLinks)];
  }
  if (isKind(entry, 'exceptions')) return sourceLinks(entry.data.sources ?? []);
  if (isKind(entry, 'sources')) return sourceLinks(entry.data.restsOn ?? [], 'restsOn');
  if (isKind(entry, 'statements')) {
    return [
      { kind: 'sources', id: entry.data.source, path: ['source'] },
      ...entry.data.claims.map(
        (claim, index): Link => ({ kind: 'profiles', id: claim.profile, path: ['claims', index, 'profile'] }),
      ),
    ];
  }
  return [];
}

function ruleLinks({ guides, profiles, sources }: TableEntryRule, index: number): Link[] {
  const of = (kind: 'guides' | 'profiles' | 'sources', ids: readonly string[]): Link[] =>
    ids.map((id, at) => ({ kind, id, path: ['rules', index, kind, at] }));
  return [...of('guides', guides), ...of('profiles', profiles), ...of('sources', sources)];
}

/** Narrows an entry to a kind. */
export function isKind<K extends Kind>(entry: Entry, kind: K): entry is Entry<K> {
  return entry.kind === kind;
}

function sourceLinks(ids: readonly string[], field = 'sources'): Link[] {
  return ids.map((id, index) => ({ kind: 'sources', id, path: [field, index] }));
}

/** All entries of a base, site first, then kind by kind. */
export function* allEntries(base: Base): Generator<Entry> {
  if (base.site) yield base.site;
  for (const kind of linkedKinds) yield* base[kind].values();
}

export const linkedKinds = [
  'families',
  'sequences',
  'profiles',
  'outputs',
  'sources',
  'statements',
  'guides',
  'plans',
  'tables',
  'equipment',
  'exceptions',
  'words',
] as const;

/** What is said of the name of an entry that is not there. */
export function noSuchEntry(
  base: Base,
  kind: Link['kind'],
  id: string,
): { readonly message: string; readonly help: string } {
  const guess = nearest(id, base[kind].keys());
  return {
    message: `There is no ${kindNouns[kind]} “${id}”.`,
    help: guess ? `Did you mean “${guess}”?` : `Correct the id, or add the file ${fileOfEntry(kind, id)}.`,
  };
}

/** The file an entry is kept in, below the content folder. */
export function fileOfEntry(kind: Link['kind'], id: string): string {
  if (kind === 'outputs') return `${kind}/${id}/session.yaml`;
  return `${kind}/${id}${markdownKinds.includes(kind) ? '.md' : '.yaml'}`;
}

/**
 * A finding for each link to an entry that is not there. Entries that exist but could not be read
 * (`broken`, as `kind/id`) are left out: their own findings come first.
 */
export function danglingLinks(base: Base, broken: ReadonlySet<string>): Finding[] {
  const findings: Finding[] = [];
  const exists = (kind: Link['kind'], id: string): boolean =>
    base[kind].has(id) || broken.has(`${kind}/${id}`);
  const dangling = (kind: Link['kind'], id: string, place: Finding['place']): Finding => ({
    rule: 'dangling-link',
    severity: 'error',
    place,
    ...noSuchEntry(base, kind, id),
    related: [],
  });
  for (const entry of allEntries(base)) {
    for (const link of linksOf(entry)) {
      if (exists(link.kind, link.id)) continue;
      findings.push(dangling(link.kind, link.id, link.place ?? entry.place(link.path)));
    }
  }
  for (const table of base.readings.values()) {
    for (const profile of table.profiles) {
      if (exists('profiles', profile)) continue;
      const first = table.readingsOf(profile)[0];
      if (first) findings.push(dangling('profiles', profile, table.place(first.id, 'profile')));
    }
  }
  return findings;
}
