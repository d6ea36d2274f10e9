import { allEntries, type Base, type Finding, linksOf } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const orphanedEntry: Rule = {
  id: 'orphaned-entry',
  title: 'Every entry is of use to another.',
  explanation:
    'The site’s lists show every unit, plan, guide and source, and a unit’s page shows every code of its family, so no page is out of reach. But an entry can be there for nothing: a source that no entry cites, a family without a single profile (its page lists no code), a bench session whose sheet has no reading. Often it is the trace of a slip elsewhere, such as another source cited in its place. It misleads nobody, and an entry may be put in before what will use it: this is news and does not fail the check. It is told once every file can be read and every link leads somewhere.',
  severity: 'note',
  examples: [
    {
      title: 'a source that nothing cites any more',
      file: 'statements/letter-rear.yaml',
      good: 'source: rider-letter',
      bad: 'source: maker-bulletin',
      foundIn: 'sources/rider-letter.yaml',
      foundAt: 'Letter of a rider',
    },
  ],
  check: ({ answers: { base }, readerFindings }) => {
    // What could not be read may be what leads there.
    if (readerFindings.length > 0) return [];
    return [...uncitedSources(base), ...emptyFamilies(base), ...emptySessions(base)];
  },
};

function uncitedSources(base: Base): Finding[] {
  const cited = new Set<string>();
  for (const entry of allEntries(base)) {
    for (const link of linksOf(entry)) {
      if (link.kind === 'sources' && !(entry.kind === 'sources' && link.id === entry.id)) cited.add(link.id);
    }
  }
  return [...base.sources.values()]
    .filter((source) => !cited.has(source.id))
    .map((source) => ({
      rule: 'orphaned-entry',
      severity: 'note',
      place: source.place(['title']),
      message: `No entry cites the source “${source.id}”.`,
      help: 'Cite it where its facts stand; if another source was named there in its place, correct that.',
      related: [],
    }));
}

function emptyFamilies(base: Base): Finding[] {
  return [...base.families.values()]
    .filter((family) => !base.profilesOfFamily.has(family.id))
    .map((family) => ({
      rule: 'orphaned-entry',
      severity: 'note',
      place: family.place(['name']),
      message: `The family “${family.id}” has no profile, so its page lists no code.`,
      help: `Add its profiles in profiles/${family.id}/.`,
      related: [],
    }));
}

function emptySessions(base: Base): Finding[] {
  return (
    [...base.outputs.values()]
      // A sheet without readings names no profile, which is known without reading its rows.
      .filter((session) => base.readings.get(session.id)?.profiles.length === 0)
      .map((session) => ({
        rule: 'orphaned-entry',
        severity: 'note',
        place: session.place(['source']),
        message: `The sheet of the session “${session.id}” has no reading.`,
        help: 'Add the readings to its readings.csv, one line a reading.',
        related: [],
      }))
  );
}
