import type { Base, Entry, Finding, Place } from '../../base/index.ts';
import { circleGroups } from '../circles.ts';
import type { Rule } from '../rule.ts';
import { daysBetween, mistakenSources, mostDaysToWriteUp } from '../session-sources.ts';
import { restingOn } from '../source-roots.ts';

export const sourceTooOld: Rule = {
  id: 'source-too-old',
  title: 'No source is older than what it is the source of.',
  explanation: `A source cannot tell of what was not there yet. The dates of the base are held against each other: a bench session and the source it is cited as (dated the same day, or at most ${mostDaysToWriteUp} days later, for writing up), readings and the decision to set them aside, a source and those it was taken from, and a unit’s first model year and what is cited for the unit, its profiles and the statements about them. Machines of a model year are built from the year before on (common practice, no source). A published standard may be older than all it is cited for. Correct the date that was written wrongly, or cite a source that can know.`,
  severity: 'error',
  examples: [
    {
      title: 'readings taken after their source was written',
      file: 'sources/loft-session.yaml',
      good: 'date: 2026-02-03',
      bad: 'date: 2025-02-03',
      foundAt: '2025-02-03',
    },
    {
      title: 'a source taken from a later one',
      file: 'sources/rider-letter.yaml',
      good: 'date: 2025-09-01',
      bad: 'date: 2015-09-01',
      foundAt: 'maker-bulletin',
    },
    {
      title: 'a unit first built long after what is cited for it',
      file: 'families/fellside.md',
      good: 'model: Ordwick, fromYear: 2010, toYear: 2014',
      bad: 'model: Pellmoor, fromYear: 2025, toYear: 2027',
      foundAt: '2025',
    },
  ],
  check: ({ answers: { base } }) => {
    const [misdated, sessionsNamed] = misdatedSessions(base);
    return [
      ...misdated,
      ...asideTooSoon(base),
      ...restingOnLater(base),
      ...[...base.families.values()].flatMap((family) => beforeTheUnit(base, family, sessionsNamed)),
    ];
  },
};

function finding(place: Place, message: string, help: string, related: Finding['related']): Finding {
  return { rule: 'source-too-old', severity: 'error', place, message, help, related };
}

/** Sessions whose date does not go with that of their source, and their ids. */
function misdatedSessions(base: Base): [findings: Finding[], sessions: ReadonlySet<string>] {
  const mistaken = new Set(mistakenSources(base).map(({ session }) => session.id));
  const sessions = new Set<string>();
  const sources = new Set<string>();
  const findings: Finding[] = [];
  for (const session of base.outputs.values()) {
    const source = base.sources.get(session.data.source);
    if (source?.data.kind !== 'bench-session' || mistaken.has(session.id)) continue;
    const days = daysBetween(session.data.date, source.data.date);
    if (days >= 0 && days <= mostDaysToWriteUp) continue;
    sessions.add(session.id);
    const isSourceWrong =
      bearsDate(session.id, session.data.date) && !bearsDate(session.id, source.data.date);
    if (isSourceWrong && sources.has(source.id)) continue;
    if (isSourceWrong) sources.add(source.id);
    const [atFault, other] = isSourceWrong ? [source, session] : [session, source];
    findings.push(
      finding(
        atFault.place(['date']),
        days < 0
          ? `The readings of “${session.id}” were taken on ${session.data.date}, after their source “${source.id}” was made (${source.data.date}).`
          : `The source “${source.id}” is dated ${source.data.date}, ${days} days after the readings of “${session.id}” were taken (${session.data.date}).`,
        'Look up the day in the bench book, and correct the date that is wrong.',
        [{ place: other.place(['date']), message: 'The other date.' }],
      ),
    );
  }
  return [findings, sessions];
}

/** Whether a session’s folder, where its name begins with a year, is named for this date. */
function bearsDate(session: string, date: string): boolean {
  const named = /^\d{4}(-\d{2}){0,2}(?=-|$)/.exec(session)?.[0];
  return named !== undefined && date.startsWith(named);
}

function asideTooSoon(base: Base): Finding[] {
  return [...base.outputs.values()].flatMap((session) =>
    session.data.setAside.flatMap(({ date }, index) =>
      date >= session.data.date
        ? []
        : finding(
            session.place(['setAside', index, 'date']),
            `These readings were set aside on ${date}, before they were taken (${session.data.date}).`,
            'Correct the date of the decision, or that of the session.',
            [{ place: session.place(['date']), message: 'When they were taken.' }],
          ),
    ),
  );
}

function restingOnLater(base: Base): Finding[] {
  // In a circle one of the dates is always later; the circle itself is what is wrong.
  const groups = circleGroups(restingOn(base));
  return [...base.sources.values()].flatMap((source) =>
    (source.data.restsOn ?? []).flatMap((id, index) => {
      const root = base.sources.get(id);
      if (!root || root.data.date <= source.data.date) return [];
      if (groups.has(id) && groups.get(id) === groups.get(source.id)) return [];
      return finding(
        source.place(['restsOn', index]),
        `“${source.id}” is dated ${source.data.date}; it cannot have been taken from “${id}”, which is of ${root.data.date}.`,
        'Correct the date that is wrong, or take the source out of restsOn.',
        [{ place: root.place(['date']), message: 'The later source.' }],
      );
    }),
  );
}

/** What is cited for a unit, its profiles and statements about them, and was made before there was one. */
function beforeTheUnit(base: Base, family: Entry<'families'>, misdated: ReadonlySet<string>): Finding[] {
  const spans = family.data.fitment
    .map(({ fromYear, toYear }, index) => ({ fromYear, toYear, index }))
    .filter(({ fromYear, toYear }) => fromYear <= toYear);
  const [first] = spans.sort((a, b) => a.fromYear - b.fromYear);
  if (!first) return [];
  const builtFrom = `${first.fromYear - 1}-01-01`;
  const firstYear = family.place(['fitment', first.index, 'fromYear']);
  const unit = `the ${family.data.name}, first of model year ${first.fromYear}`;
  const related = [{ place: firstYear, message: 'The first model year.' }];
  const isTooOld = (sources: readonly string[]): boolean => {
    const newest = newestDate(base, sources);
    return newest !== undefined && newest < builtFrom;
  };
  if (isTooOld(family.data.sources)) {
    return [
      finding(
        firstYear,
        `All that is cited for ${unit}, was made before there was one; the newest is of ${newestDate(base, family.data.sources)}.`,
        'Correct the model year, or cite a source that can know the unit.',
        family.data.sources.flatMap((id) => {
          const source = base.sources.get(id);
          return source ? [{ place: source.place(['date']), message: 'A source cited for it.' }] : [];
        }),
      ),
    ];
  }
  const profiles = base.profilesOfFamily.get(family.id) ?? [];
  const statements = new Set(profiles.flatMap(({ id }) => base.statementsOfProfile.get(id) ?? []));
  const sessions = new Set(profiles.flatMap(({ id }) => base.sessionsOfProfile.get(id) ?? []));
  return [
    ...profiles
      .filter(({ data }) => isTooOld(data.sources))
      .map((profile) =>
        finding(
          profile.place(['sources']),
          `All sources of this profile were made before there was ${unit}.`,
          'Cite a source that can know the profile, or correct the date that is wrong.',
          related,
        ),
      ),
    ...profiles
      .filter(({ data }) => !isTooOld(data.sources))
      .flatMap((profile) =>
        profile.data.sources.flatMap((id, index) =>
          isTooOld([id])
            ? [
                finding(
                  profile.place(['sources', index]),
                  `“${id}” is of ${newestDate(base, [id])}; it cannot tell of ${unit}.`,
                  'Name the source that says so, or correct the date that is wrong.',
                  related,
                ),
              ]
            : [],
        ),
      ),
    ...[...statements]
      .filter(({ data }) => isTooOld([data.source]))
      .map((statement) =>
        finding(
          statement.place(['source']),
          `“${statement.data.source}” is of ${newestDate(base, [statement.data.source])}; it cannot tell of ${unit}.`,
          'Name the source that says so, or correct the date that is wrong.',
          related,
        ),
      ),
    ...[...sessions]
      .filter(({ id, data }) => data.date < builtFrom && !misdated.has(id))
      .map((session) =>
        finding(
          session.place(['date']),
          `Readings of ${session.data.date} cannot be of ${unit}.`,
          'Correct the date of the session or the model year, or the profile in its sheet.',
          related,
        ),
      ),
  ];
}

/** The newest date among sources; undefined where one is unknown or none could tell by its date. */
function newestDate(base: Base, ids: readonly string[]): string | undefined {
  const sources = ids.map((id) => base.sources.get(id)?.data);
  if (sources.includes(undefined)) return undefined;
  return sources
    .flatMap((source) => (source && source.kind !== 'published-standard' ? [source.date] : []))
    .sort()
    .at(-1);
}
