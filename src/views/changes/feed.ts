/** The feed of changes (Atom, RFC 4287): what the answers say differently, and the bench sessions by date. */
import { createHash } from 'node:crypto';
import type { Answers } from '../../answers.ts';
import { countPhrase, phrase } from '../../words/index.ts';
import { sentenceText } from '../answer-sentence.ts';
import { changesPath, profilePath, sessionAnchor, sourcePath, unitPath, unitsPath } from '../paths.ts';
import { sentenceOf } from '../profile-page.ts';
import type { Published, PublishedFile } from '../published-file.ts';
import { siteView } from '../site.ts';
import { longDate } from '../wording.ts';
import { element, type XmlElement, xmlText } from '../xml.ts';
import type { ProfileChange, SinceRevision } from './compare.ts';

/** Readers of feeds look at what is new: older sessions are on the page of sources. */
const mostSessions = 50;

interface FeedEntry {
  /** A tag URI (RFC 4151): the same for the same change, whenever the site is built. */
  readonly id: string;
  readonly title: string;
  /** ISO 8601, the day alone. */
  readonly date: string;
  /** Below the base path. */
  readonly path: string;
  readonly text: string;
}

/** The feed: the changes first, then the latest bench sessions, newest first. */
export function changesFeed(
  answers: Answers,
  { address, date }: Published,
  since: SinceRevision | undefined,
): PublishedFile {
  const { name, tagline, notice } = siteView(answers);
  const entries = [
    ...(since ? since.changes().map((change) => changeEntry(answers, address, date, since, change)) : []),
    ...sessionEntries(answers, address),
  ];
  const updated =
    entries
      .map((entry) => entry.date)
      .sort()
      .at(-1) ?? date;
  const feed = element('feed', { xmlns: 'http://www.w3.org/2005/Atom', 'xml:lang': phrase('en') }, [
    element('id', {}, `${address}${changesPath}`),
    element('title', {}, phrase('{shop}: what changed', { shop: name })),
    element('subtitle', {}, notice === undefined ? tagline : `${tagline}. ${notice}`),
    element('updated', {}, instant(updated)),
    element('author', {}, [element('name', {}, name), element('uri', {}, address)]),
    element('link', { rel: 'self', type: 'application/atom+xml', href: `${address}${changesPath}` }),
    element('link', { rel: 'alternate', type: 'text/html', href: address }),
    element('generator', {}, 'Readback'),
    ...entries.map((entry) => entryElement(entry, address)),
  ]);
  return { path: changesPath, text: () => xmlText(feed) };
}

function entryElement({ id, title, date, path, text }: FeedEntry, address: string): XmlElement {
  return element('entry', {}, [
    element('id', {}, id),
    element('title', {}, title),
    element('updated', {}, instant(date)),
    element('link', { rel: 'alternate', type: 'text/html', href: `${address}${path}` }),
    element('content', { type: 'text' }, text),
  ]);
}

function changeEntry(
  answers: Answers,
  address: string,
  date: string,
  since: SinceRevision,
  { profile, code, kind, sentences }: ProfileChange,
): FeedEntry {
  const { base } = answers;
  const entry = base.profiles.get(profile);
  const family = base.families.get(entry?.data.family ?? profile.split('/')[0] ?? '');
  const named = family ? `${code} (${family.data.name})` : code;
  const sentence = entry && sentenceOf(answers, entry);
  const [title, text, path] = {
    new: [
      phrase('New: {profile}', { profile: named }),
      sentence ? sentenceText(sentence) : named,
      profilePath(profile),
    ],
    changed: [phrase('Changed: {profile}', { profile: named }), sentences.join('\n'), profilePath(profile)],
    gone: [
      phrase('No longer listed: {profile}', { profile: named }),
      phrase('The profile {profile} is no longer on this site.', { profile: named }),
      family ? unitPath(family.id) : unitsPath,
    ],
  }[kind] as [string, string, string];
  const digest = createHash('sha256').update(`${title}\n${text}`).digest('hex').slice(0, 12);
  const name = `changes/${since.commit.slice(0, 12)}/${profile}/${digest}`;
  return { id: tagUri(address, since.date, name), title, date, path, text };
}

function sessionEntries({ base }: Answers, address: string): FeedEntry[] {
  return [...base.outputs.values()]
    .sort((a, b) => (a.data.date === b.data.date ? compare(a.id, b.id) : compare(b.data.date, a.data.date)))
    .slice(0, mostSessions)
    .map(({ id, data }) => {
      const profiles = (base.readings.get(id)?.profiles ?? []).flatMap(
        (profile) => base.profiles.get(profile) ?? [],
      );
      const units = [...new Set(profiles.map((profile) => profile.data.family))].map((family) => {
        const codes = profiles.filter((one) => one.data.family === family).map((one) => one.data.code);
        return `${base.families.get(family)?.data.name ?? family}: ${codes.join(', ')}`;
      });
      return {
        id: tagUri(address, data.date, `sessions/${id}`),
        title: countPhrase(
          profiles.length,
          'Bench session of {date}: {count}\u00a0profile',
          'Bench session of {date}: {count}\u00a0profiles',
          { date: longDate(data.date) },
        ),
        date: data.date,
        path: `${sourcePath(data.source)}#${sessionAnchor(id)}`,
        text: phrase('Measured: {profiles}.', { profiles: units.join('; ') }),
      };
    });
}

/** A tag URI in the name of the host the site is at; `name` is below its path. */
function tagUri(address: string, date: string, name: string): string {
  const { hostname, pathname } = new URL(address);
  return `tag:${hostname},${date}:${pathname}${name}`;
}

/** Content is dated by the day: the instant it begins, UTC (RFC 3339). */
function instant(date: string): string {
  return `${date}T00:00:00Z`;
}

/** By code units, so that the order is the same in every locale. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
