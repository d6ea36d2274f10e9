/** The view model of a source: what it is, how far to trust it, what rests on it. */
import type { Answers } from '../answers.ts';
import { allEntries, type Entry, isKind, linksOf } from '../base/index.ts';
import { phrase } from '../words/index.ts';
import {
  guidePath,
  planPath,
  profilePath,
  readingsPath,
  sessionAnchor,
  sourcePath,
  tablePath,
  unitPath,
} from './paths.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import { type Fact, sessionFacts } from './session-conditions.ts';
import { longDate, sourceKindLabel, trustLabel } from './wording.ts';

export interface NamedLink {
  readonly text: string;
  readonly path: string;
}

export interface SourcePageView {
  readonly id: string;
  readonly path: string;
  readonly title: string;
  readonly description: string;
  readonly kind: string;
  readonly facts: readonly Fact[];
  readonly restsOn: readonly SourceLink[];
  readonly sessions: readonly {
    readonly id: string;
    readonly anchor: string;
    readonly facts: readonly Fact[];
    readonly method: string;
    readonly readings: readonly NamedLink[];
  }[];
  readonly quotes: readonly string[];
  /** Pages whose facts rest on this source, grouped by what they are. */
  readonly usedBy: readonly { readonly label: string; readonly links: readonly NamedLink[] }[];
}

/** One view for each source, in the order of the files. */
export function sourcePages(answers: Answers): SourcePageView[] {
  const users = usersOfSources(answers);
  return [...answers.base.sources.values()].map((source) =>
    sourcePage(answers, source, users.get(source.id) ?? []),
  );
}

/** Every entry that names a source, found in one walk. */
function usersOfSources(answers: Answers): Map<string, Entry[]> {
  const users = new Map<string, Entry[]>();
  for (const entry of allEntries(answers.base)) {
    const named = linksOf(entry).filter((link) => link.kind === 'sources');
    for (const id of new Set(named.map((link) => link.id))) {
      const known = users.get(id);
      if (known) known.push(entry);
      else users.set(id, [entry]);
    }
  }
  return users;
}

function sourcePage(answers: Answers, source: Entry<'sources'>, users: readonly Entry[]): SourcePageView {
  const { base } = answers;
  const { data, id } = source;
  return {
    id,
    path: sourcePath(id),
    title: data.title,
    description: phrase('{kind} of {date}.', { kind: sourceKindLabel(data.kind), date: longDate(data.date) }),
    kind: sourceKindLabel(data.kind),
    facts: [
      { label: phrase('Kind'), text: sourceKindLabel(data.kind) },
      { label: phrase('Date'), text: longDate(data.date) },
      { label: phrase('Kept at'), text: data.keptAt },
      { label: phrase('Trust'), text: `${trustLabel(data.trust)}. ${data.trustReason}` },
    ],
    restsOn: sourceLinks(answers, data.restsOn ?? []),
    sessions: users
      .filter((entry) => isKind(entry, 'outputs'))
      .map((session) => ({
        id: session.id,
        anchor: sessionAnchor(session.id),
        facts: sessionFacts(session.data),
        method: session.data.method,
        readings: (base.readings.get(session.id)?.profiles ?? []).flatMap((profile) => {
          const entry = base.profiles.get(profile);
          if (!entry || !base.families.has(entry.data.family)) return [];
          return [{ text: entry.data.code, path: `${readingsPath(profile)}#${sessionAnchor(session.id)}` }];
        }),
      })),
    quotes: users.filter((entry) => isKind(entry, 'statements')).map((statement) => statement.data.quote),
    usedBy: usedBy(answers, users),
  };
}

function usedBy(answers: Answers, users: readonly Entry[]): SourcePageView['usedBy'] {
  const groups = [
    {
      label: phrase('Units'),
      links: [
        ...users.filter((entry) => isKind(entry, 'families')).map((entry) => unitLink(answers, entry.id)),
        ...users
          .filter((entry) => isKind(entry, 'sequences'))
          .map((entry) => unitLink(answers, entry.data.family)),
      ].flatMap((link) => link ?? []),
    },
    {
      label: phrase('Profiles'),
      links: [
        ...users.filter((entry) => isKind(entry, 'profiles')).map((entry) => entry.id),
        ...users
          .filter((entry) => isKind(entry, 'statements'))
          .flatMap((entry) => entry.data.claims.map((claim) => claim.profile)),
      ].flatMap((id) => profileLink(answers, id) ?? []),
    },
    {
      label: phrase('Plans'),
      links: users
        .filter((entry) => isKind(entry, 'plans'))
        .map((entry) => ({ text: entry.data.name, path: planPath(entry.id) })),
    },
    {
      label: phrase('Tables'),
      links: users
        .filter((entry) => isKind(entry, 'tables'))
        .filter(({ id }) => answers.tables.get(id)?.table !== undefined)
        .map((entry) => ({ text: entry.data.name, path: tablePath(entry.id) })),
    },
    {
      label: phrase('Guides'),
      links: users
        .filter((entry) => isKind(entry, 'guides'))
        .map((entry) => ({ text: entry.data.title, path: guidePath(entry.id) })),
    },
    {
      label: phrase('Sources taken from it'),
      links: users
        .filter((entry) => isKind(entry, 'sources'))
        .map((entry) => ({ text: entry.data.title, path: sourcePath(entry.id) })),
    },
  ];
  return groups
    .map((group) => ({ ...group, links: distinct(group.links) }))
    .filter(({ links }) => links.length > 0);
}

function unitLink(answers: Answers, family: string): NamedLink | undefined {
  const entry = answers.base.families.get(family);
  return entry && { text: entry.data.name, path: unitPath(family) };
}

function profileLink(answers: Answers, id: string): NamedLink | undefined {
  const entry = answers.base.profiles.get(id);
  if (!entry || !answers.base.families.has(entry.data.family)) return undefined;
  return { text: entry.data.code, path: profilePath(id) };
}

function distinct(links: readonly NamedLink[]): NamedLink[] {
  return [...new Map(links.map((link) => [link.path, link])).values()];
}
